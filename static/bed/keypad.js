// The keypad for gloves: feet, inches and sixteenths, or millimetres; the verdict stands there as soon as the reading does.

import { inWords, lettered } from "./lengths.js";
import { paragraph } from "./sheets.js";

// The largest reading is a foot, or 300 mm, past the panel.
function boxesOf(unit, reach) {
  if (unit === "mm") return [{ name: "mm", most: Math.ceil(reach * 25.4) + 300 }];
  return [
    { name: "feet", most: Math.ceil(reach / 12) + 1 },
    { name: "inches", most: 11 },
    { name: "16ths", most: 15 },
  ];
}

const KEYS = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "Delete", "0", "Next"];

export class Keypad {
  constructor(unit, reach, judge, record) {
    this.unit = unit;
    this.judge = judge;
    this.recorded = record;
    this.boxes = boxesOf(unit, reach);
    this.dialog = document.getElementById("keypad");
    this.button = document.getElementById("keypad-record");
    this.fields = this.boxes.map((box, k) => this.field(box, k));
    document.getElementById("keypad-keys").append(...KEYS.filter((key) => key !== "Next" || this.boxes.length > 1).map((key) => this.key(key)));
    document.getElementById("keypad-close").addEventListener("click", () => this.dialog.close());
    this.button.addEventListener("click", () => this.press());
    this.dialog.addEventListener("keydown", (event) => this.typed(event));
  }

  field(box, k) {
    const made = document.createElement("button");
    made.type = "button";
    made.className = "keypad-box";
    made.innerHTML = "<span></span><small></small>";
    made.querySelector("small").textContent = box.name;
    made.addEventListener("click", () => this.go(k));
    document.getElementById("keypad-boxes").append(made);
    return made;
  }

  key(key) {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = key;
    made.addEventListener("click", () => this.put(key));
    return made;
  }

  open(point, title, expected) {
    this.point = point;
    this.values = this.boxes.map(() => "");
    document.getElementById("keypad-title").textContent = title;
    document.getElementById("keypad-expected").textContent = expected;
    this.go(0);
    if (!this.dialog.open) this.dialog.showModal();
  }

  typed(event) {
    const key = { Backspace: "Delete", Tab: "", ArrowRight: "Next" }[event.key] ?? event.key;
    if (!KEYS.includes(key)) return;
    event.preventDefault();
    this.put(key);
  }

  put(key) {
    if (key === "Next") return this.go((this.at + 1) % this.boxes.length);
    if (key === "Delete") {
      if (this.values[this.at] === "" && this.at > 0) this.at -= 1;
      this.values[this.at] = this.values[this.at].slice(0, -1);
      return this.go(this.at);
    }
    const { most } = this.boxes[this.at];
    const longer = this.values[this.at] + key;
    if (Number(longer) > most) {
      this.refused = `${this.boxes[this.at].name}: found ${longer}, expected at most ${most}.`;
      return this.show();
    }
    this.values[this.at] = String(Number(longer));
    // Nothing more can follow in this box: on to the next.
    const isFull = longer !== "0" && Number(`${longer}0`) > most;
    return this.go(isFull && this.at < this.boxes.length - 1 ? this.at + 1 : this.at);
  }

  go(at) {
    this.at = at;
    this.refused = "";
    this.isSure = false;
    this.show();
  }

  // Inches and the words for it; null as long as nothing is typed.
  get reading() {
    if (this.values.every((value) => value === "")) return null;
    const [first, inches, sixteenths] = this.values.map(Number);
    if (this.unit === "mm") return { value: first / 25.4, words: `${first} mm` };
    const ticks = (first * 12 + inches) * 16 + sixteenths;
    return { value: ticks / 16, words: inWords(ticks, 16) };
  }

  show() {
    this.fields.forEach((field, k) => {
      field.querySelector("span").textContent = this.values[k] || "–";
      field.setAttribute("aria-pressed", String(k === this.at));
    });
    const { reading } = this;
    const verdict = reading && this.judge(reading.value, reading.words);
    const words = verdict ? [paragraph(verdict.name, "key"), paragraph(verdict.said), paragraph(verdict.instruction)] : [];
    document.getElementById("keypad-verdict").replaceChildren(...(this.refused ? [paragraph(this.refused, "attention")] : words));
    this.button.disabled = !reading;
    this.isOff = Boolean(verdict) && verdict.kind !== "hold";
    this.button.textContent = !reading ? "Record" : this.isSure ? `Yes, it reads ${lettered(reading.words)}` : `Record ${lettered(reading.words)}`;
  }

  // Only what is past its band is asked about again.
  press() {
    if (this.isOff && !this.isSure) {
      this.isSure = true;
      return this.show();
    }
    const { point, reading } = this;
    this.dialog.close();
    return this.recorded(point, reading);
  }
}
