// The drawing by keyboard: one tab stop, arrows inside.

const DRAW_KEYS = "oacpszfu";

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
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z" && !typing) {
      event.preventDefault();
      document.getElementById(event.shiftKey ? "redo" : "undo")?.click();
    }
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
    if (nudge && event.shiftKey) return () => this.nudge(nudge[0] * this.tick, nudge[1] * this.tick);
    if (nudge) return () => this.things.step(nudge[0] - nudge[1]);
    if (DRAW_KEYS.includes(event.key)) return () => document.querySelector(`[data-draw-key="${event.key}"]`)?.click();
    if (this.gestures.current) return { Enter: () => this.gestures.enter(), Backspace: () => this.gestures.back() }[event.key];
    return {
      Enter: () => document.querySelector("#card input:not([type=hidden]), #card select, #card button")?.focus(),
      Delete: () => document.querySelector("#card [data-remove]")?.click(),
      "+": () => this.frame.zoomMiddle(1.25),
      "=": () => this.frame.zoomMiddle(1.25),
      "-": () => this.frame.zoomMiddle(0.8),
      0: () => this.frame.fit(),
    }[event.key];
  }

  nudge(dx, dy) {
    const shape = this.things.shape;
    if (shape?.dataset.moves) this.gestures.commitMove(shape, dx, dy);
    else this.say.words("Choose an opening or a zone with the arrow keys first");
  }
}
