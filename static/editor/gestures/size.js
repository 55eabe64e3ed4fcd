// Moves one side of a rectangle, or two at a corner.

import { keyOf, placed } from "./fields.js";

export class Size {
  constructor(tools, event, shape) {
    Object.assign(this, tools);
    this.shape = shape;
    this.sides = event.target.closest(".handle").dataset.sides.split(" ");
    const [x, y, width, height] = JSON.parse(shape.dataset.box);
    this.box = { left: x, right: x + width, bottom: y, top: y + height };
    this.sized = null;
  }

  move(at, event) {
    const box = { ...this.box };
    const hits = [];
    for (const side of this.sides) {
      const found = this.snap.side(side, side === "left" || side === "right" ? at.x : at.y, this.snap.reach(event));
      box[side] = found.at;
      if (found.hit) hits.push(found.hit);
    }
    if (box.right - box.left < 1 || box.top - box.bottom < 1) return;
    this.sized = box;
    this.ghost ??= this.ghosts.shape("rect");
    this.ghosts.place(this.ghost, box);
    this.snap.show(hits);
    this.say.sized(box, hits);
  }

  fields() {
    const { sized, shape, say } = this;
    return sized && (() => ({ edit: shape.dataset.sides, ...keyOf(shape), ...placed(say, sized) }));
  }

  drop() {
    this.ghost?.remove();
  }
}
