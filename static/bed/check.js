// Check: every checkpoint in tape order with what the tape should read at this bed temperature; a press opens the keypad.

import { lettered, read, said } from "./lengths.js";
import { Keypad } from "./keypad.js";
import { paragraph } from "./sheets.js";
import { judge } from "./verdict.js";

const NAMES = { hold: "Hold", adjust: "Adjust", relay: "Relay", measure: "Measure the bed" };
const STALE = 30 * 60_000;
const SVG = "http://www.w3.org/2000/svg";

export class Check {
  constructor(work, guarded) {
    this.work = work;
    this.points = work.data.checkpoints;
    this.bed = document.getElementById("bed-temperature");
    this.tape = document.getElementById("tape-temperature");
    this.box = document.getElementById("points");
    this.keypad = new Keypad(work.data.unit, Math.max(work.data.extent.width, work.data.extent.height), (value, words) => this.judged(value, words), (point, reading) => guarded(() => this.record(point, reading)));
    this.rows = this.points.map((point) => this.row(point));
    for (const axis of ["x", "y"]) this.group(axis);
    for (const field of [this.bed, this.tape]) field.addEventListener("input", () => this.taken());
    for (const button of document.querySelectorAll(".warm [data-step]")) button.addEventListener("click", () => this.step(Number(button.dataset.step)));
    document.addEventListener("work:changed", () => this.show());
    setInterval(() => this.showTemperature(), 60_000);
    this.bring();
  }

  group(axis) {
    const rows = this.rows.filter((row) => row.point.axis === axis);
    if (!rows.length) return;
    const words = this.work.data.tapes.find((tape) => tape.axis === axis).words;
    this.box.append(paragraph(`${axis === "x" ? "Across" : "Up"}, ${words}`, "tape-words"), ...rows.map((row) => row.button));
  }

  row(point) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "point-row";
    button.innerHTML = '<span class="ring"></span><span class="where"></span><span class="key"></span><span class="last"></span><span class="told"></span>';
    button.querySelector(".ring").textContent = point.mark;
    button.querySelector(".where").textContent = `${point.control || "joint line"}, drawn at ${point.at}`;
    button.addEventListener("click", () => this.open(point));
    return { point, button };
  }

  get temperature() {
    return number(this.bed.value);
  }

  expected(point) {
    const degrees = this.temperature === null ? 0 : this.temperature - point.reference_temperature;
    return point.nominal + point.grows_per_degree * degrees;
  }

  step(by) {
    this.bed.value = String((this.temperature ?? Math.round((this.work.data.day.low + this.work.data.day.high) / 2)) + by);
    this.taken();
  }

  taken() {
    const kept = { bed: this.bed.value, tape: this.tape.value, at: Date.now() };
    try {
      sessionStorage.setItem("bed-warmth", JSON.stringify(kept));
    } catch {
      // Asked for again after the next start.
    }
    this.takenAt = kept.at;
    this.show();
  }

  bring() {
    try {
      const kept = JSON.parse(sessionStorage.getItem("bed-warmth"));
      if (kept) [this.bed.value, this.tape.value, this.takenAt] = [kept.bed, kept.tape, kept.at];
    } catch {
      // Nothing kept.
    }
  }

  showTemperature() {
    const words = document.getElementById("warm-words");
    const { degree, reference } = this.work.data;
    if (this.bed.value.trim() && this.temperature === null) words.textContent = `Found ${this.bed.value.trim()}, expected a temperature in °${degree}, for example 94.`;
    else if (this.temperature === null) words.textContent = `No bed temperature yet: readings below are for ${reference} °${degree}. Measure the liner on the bed.`;
    else if (Date.now() - (this.takenAt ?? 0) > STALE) words.textContent = `Taken ${Math.round((Date.now() - this.takenAt) / 60_000)} minutes ago: measure again.`;
    else words.textContent = `The tape should read this at ${this.temperature} °${degree}, nothing corrected.`;
  }

  show() {
    this.showTemperature();
    let open = 0;
    for (const { point, button } of this.rows) {
      const readings = this.work.state.readings.get(point.mark) ?? [];
      const last = readings.at(-1);
      button.querySelector(".key").textContent = lettered(said(this.expected(point), this.work.data.unit));
      button.querySelector(".last").textContent = last ? this.told(last, readings.length) : "not read yet";
      button.querySelector(".told").textContent = last && last.body.verdict !== "hold" ? this.again(last, point) : "";
      button.dataset.verdict = last?.body.verdict ?? "";
      if (!last || last.body.verdict !== "hold") open += 1;
      this.mark(point, last);
    }
    document.getElementById("count-check").textContent = `${this.points.length - open} of ${this.points.length}`;
  }

  told(record, count) {
    const moved = !this.work.isOfThis(record) ? `, by ${this.work.revOf(record)}: read again` : "";
    return `${NAMES[record.body.verdict] ?? record.body.verdict}: read ${lettered(record.body.reading)}${count > 1 ? `, ${count} readings` : ""}${moved}`;
  }

  // What the reading asked for, once more in words.
  again({ body }, point) {
    const value = read(body.reading);
    return value === null ? "" : judge({ value, bed: number(body.bed), tape: number(body.tape) }, point, this.work.data.unit, this.work.data.degree).instruction;
  }

  // A ring that is filled in the drawing once the checkpoint holds.
  mark(point, last) {
    const marks = document.getElementById("point-marks");
    let line = marks.querySelector(`[data-point="${point.mark}"]`);
    if (!line) {
      line = document.createElementNS(SVG, "path");
      line.dataset.point = point.mark;
      const { width, height } = this.work.data.extent;
      line.setAttribute("d", point.axis === "x" ? `M${point.place[0]} 0V${height}` : `M0 ${point.place[1]}H${width}`);
      marks.append(line);
    }
    line.setAttribute("class", last ? (last.body.verdict === "hold" ? "held" : "off") : "");
  }

  open(point) {
    const expected = `Drawn ${point.at}; the tape should read ${lettered(said(this.expected(point), this.work.data.unit))}`;
    this.point = point;
    this.keypad.open(point, `${point.mark}, ${point.control || "joint line"}`, expected);
  }

  // Right at another checkpoint, and an inch or more off this one: most likely that one was read.
  misread(value) {
    if (Math.abs(value - this.point.nominal) <= 1) return "";
    const other = this.points.find((point) => point.axis === this.point.axis && Math.abs(value - this.expected(point)) <= point.band);
    return other ? `Did you read ${other.mark}? It is at ${other.at}. ` : "";
  }

  judged(value, words) {
    const verdict = judge({ value, bed: this.temperature, tape: number(this.tape.value) }, this.point, this.work.data.unit, this.work.data.degree);
    return { ...verdict, said: this.misread(value) + verdict.said, name: NAMES[verdict.kind], words };
  }

  async record(point, reading) {
    const { value, words } = reading;
    const verdict = this.judged(value, words);
    const [bed, tape] = [this.temperature, number(this.tape.value)].map((one) => (one === null ? "" : String(one)));
    await this.work.record("reading", { checkpoint: point.mark, reading: words, bed, tape, verdict: verdict.kind }, `${point.mark} read ${lettered(words)}`);
  }
}

export function number(text) {
  const plain = text.trim().replace(",", ".");
  return /^[-−]?\d+(\.\d+)?$/.test(plain) ? Number(plain.replace("−", "-")) : null;
}
