// Lay sheets: the next one lit, a press records one as laid, another press takes that back.

const SVG = "http://www.w3.org/2000/svg";

export class Sheets {
  constructor(work, guarded) {
    this.work = work;
    this.guarded = guarded;
    this.sheets = work.data.sheets;
    this.box = document.getElementById("next-sheet");
    this.paths = new Map(this.sheets.map((sheet) => [sheet.mark, this.drawn(sheet)]));
    document.addEventListener("work:changed", () => this.show());
    document.getElementById("sheet-marks").addEventListener("click", (event) => {
      const mark = event.target.closest("[data-sheet]")?.dataset.sheet;
      if (mark && document.body.dataset.task === "sheets") this.press(mark);
    });
    this.box.addEventListener("click", (event) => event.target.closest("button") && this.press(event.target.closest("button").dataset.sheet));
  }

  drawn(sheet) {
    const group = document.createElementNS(SVG, "g");
    const path = document.createElementNS(SVG, "path");
    path.setAttribute("d", sheet.path);
    path.setAttribute("fill-rule", "evenodd");
    group.dataset.sheet = sheet.mark;
    group.append(path);
    document.getElementById("sheet-marks").append(group);
    return group;
  }

  get laid() {
    return this.work.state.sheet;
  }

  get next() {
    return this.sheets.find((sheet) => !this.laid.has(sheet.mark));
  }

  press(mark) {
    const state = this.laid.has(mark) ? "lifted" : "laid";
    this.guarded(() => this.work.record("sheet", { sheet: mark, state }, `Sheet ${mark} ${state}`));
  }

  show() {
    const next = this.next;
    for (const [mark, group] of this.paths) {
      const record = this.laid.get(mark);
      group.setAttribute("class", record ? (this.work.isOfThis(record) ? "laid" : "laid before") : mark === next?.mark ? "next" : "");
    }
    document.getElementById("count-sheets").textContent = `${this.laid.size} of ${this.sheets.length}`;
    this.box.replaceChildren(...(next ? this.words(next) : [paragraph("All sheets are laid.", "big")]));
  }

  words(sheet) {
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.sheet = sheet.mark;
    button.textContent = `Sheet ${sheet.mark} is laid`;
    button.className = "main";
    const kind = sheet.kind === "whole" ? "whole" : `cut, from stack ${sheet.stack}`;
    return [paragraph(`Next: sheet ${sheet.mark}`, "big"), paragraph(kind, "key"), ...sheet.words.map((words) => paragraph(words)), button];
  }
}

export function paragraph(words, kind = "") {
  const made = document.createElement("p");
  made.textContent = words;
  made.className = kind;
  return made;
}
