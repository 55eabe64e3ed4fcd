// Draws a rectangle from corner to corner, for the edit that a card's button named.

import { placed } from "./fields.js";

export class Draw {
  constructor(tools, event, asked) {
    Object.assign(this, tools);
    this.asked = asked;
    this.from = this.snap.point(this.frame.face(event), this.snap.reach(event));
    this.box = null;
  }

  move(at, event) {
    const to = this.snap.point(at, this.snap.reach(event));
    const [left, right] = [this.from.x, to.x].sort((a, b) => a - b);
    const [bottom, top] = [this.from.y, to.y].sort((a, b) => a - b);
    if (right - left < 1 || top - bottom < 1) return;
    this.box = { left, right, bottom, top };
    this.ghost ??= this.ghosts.shape("rect");
    this.ghosts.place(this.ghost, this.box);
    this.snap.show(to.hits);
    this.say.sized(this.box, to.hits);
  }

  fields() {
    const { asked, box, say } = this;
    return box && (() => ({ edit: asked.edit, ...asked.values, ...placed(say, box) }));
  }

  drop() {
    this.ghost?.remove();
  }
}
