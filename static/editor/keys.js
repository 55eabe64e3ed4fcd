// The drawing by keyboard: one tab stop, arrows inside.

import { boxOf, removalOf } from "./gestures/fields.js";

const DRAW_KEYS = "oacpszfeu";

export class Keys {
  constructor(svg, parts) {
    Object.assign(this, parts);
    this.svg = svg;
    this.tick = svg.dataset.unit === "mm" ? 1 / 25.4 : 1 / 16;
    svg.addEventListener("keydown", (event) => this.inDrawing(event));
    document.addEventListener("keydown", (event) => this.anywhere(event));
  }

  anywhere(event) {
    const typing = event.target.closest("input, select, textarea");
    if (event.key === "Escape") this.escape();
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || !"zy".includes(key) || typing) return;
    event.preventDefault();
    document.getElementById(event.shiftKey || key === "y" ? "redo" : "undo")?.click();
  }

  showKeys() {
    const fold = document.getElementById("keys-fold");
    fold.open = true;
    fold.querySelector("summary").focus();
    fold.scrollIntoView({ block: "start" });
  }

  escape() {
    if (this.gestures.back()) return;
    if (this.places.pressed) this.places.release();
    else if (document.activeElement.closest("#card")) this.svg.focus();
    else this.things.choose(null);
  }

  inDrawing(event) {
    if (event.ctrlKey || event.metaKey) return;
    const act = this.action(event);
    if (!act) return;
    event.preventDefault();
    act();
  }

  action(event) {
    const nudge = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    if (nudge && event.altKey) return () => this.meet(nudge);
    if (nudge && event.shiftKey) return () => this.nudge(nudge[0] * this.tick, nudge[1] * this.tick);
    if (nudge) return () => this.things.step(nudge[0] - nudge[1]);
    if (event.altKey) return undefined;
    return this.letter(event.key.toLowerCase()) ?? (this.gestures.current ? this.whileDrawing(event.key) : this.atRest(event.key));
  }

  letter(key) {
    if (DRAW_KEYS.includes(key)) return () => document.querySelector(`[data-draw-key="${key}"]`)?.click();
    return {
      "?": () => this.showKeys(),
      m: () => this.things.addNext(),
      d: () => this.dimensions.focus(),
      t: () => this.table.toggle(),
      "+": () => this.frame.zoomMiddle(1.25),
      "=": () => this.frame.zoomMiddle(1.25),
    }[key];
  }

  // A minus and a digit begin a length.
  whileDrawing(key) {
    return { Enter: () => this.gestures.enter(), Backspace: () => this.gestures.back() }[key];
  }

  atRest(key) {
    return {
      Enter: () => this.toCard(),
      Delete: () => this.remove(),
      "-": () => this.frame.zoomMiddle(0.8),
      0: () => this.frame.fit(),
    }[key];
  }

  remove() {
    const { shape, others } = this.things;
    const removal = shape && others.size === 0 ? removalOf(shape) : null;
    if (removal) this.writes.edit(removal);
    else this.say.words("Choose one thing to remove it; the outline stays");
  }

  toCard() {
    document.querySelector("#card input:not([type=hidden]), #card select, #card button")?.focus();
    this.card.now();
  }

  // To the next line that the chosen thing meets that way; a zone or opening meets it with the side in front or behind.
  meet([dx, dy]) {
    const shape = this.things.shape;
    if (!shape?.dataset.moves) return this.say.words("Choose an opening or a zone with the arrow keys first");
    const found = this.snap.next(boxOf(shape), dx ? "x" : "y", dx || dy, shape.dataset.thing);
    if (!found) return this.say.words("Nothing to meet that way");
    this.gestures.commitMove(shape, dx ? found.delta : 0, dx ? 0 : found.delta);
    this.say.speak(this.say.met([found.hit])[0]);
  }

  nudge(dx, dy) {
    const shape = this.things.shape;
    if (shape?.dataset.moves) this.gestures.commitMove(shape, dx, dy);
    else this.say.words("Choose an opening or a zone with the arrow keys first");
  }
}
