// Moves one side of a shape, or two at a corner; of a circle the radius.

import { boxOf, keyOf } from "./fields.js";
import { Gesture } from "./gesture.js";

const OPPOSITE = { left: "right", right: "left", bottom: "top", top: "bottom" };

export class Size extends Gesture {
  constructor(tools, event, shape) {
    super(tools);
    this.shape = shape;
    this.sides = event.target.closest(".handle").dataset.sides.split(" ");
    this.box = boxOf(shape);
    this.sized = null;
  }

  follow(at, event) {
    const box = { ...this.box };
    const hits = [];
    for (const side of this.sides) {
      const across = isAcross(side);
      const found = this.snap.side(side, across ? at.x : at.y, this.snap.reach(event), this.shape.dataset.thing);
      const lock = this.locks[across ? "width" : "height"];
      box[side] = lock ? box[OPPOSITE[side]] + outward(side) * lock.inches : found.at;
      if (found.hit && !lock) hits.push(found.hit);
    }
    if (this.shape.dataset.round) this.keepRound(box);
    if (box.right - box.left < 1 || box.top - box.bottom < 1) return;
    this.sized = box;
    this.ghost ??= this.ghosts.shape(this.shape.dataset.round ? "ellipse" : "rect");
    this.ghosts.place(this.ghost, box);
    this.snap.show(hits);
    this.say.sized(box, hits);
  }

  // The centre stays: what one side gives, the opposite one gives as well.
  keepRound(box) {
    const [side] = this.sides;
    const out = outward(side) * (box[side] - this.box[side]);
    for (const [name, value] of Object.entries(this.box)) box[name] = value + outward(name) * out;
  }

  sizes() {
    if (this.shape.dataset.round) return [];
    const box = this.sized ?? this.box;
    const all = {
      width: { name: "width", words: "Width", value: box.right - box.left },
      height: { name: "height", words: "Height", value: box.top - box.bottom },
    };
    return this.sides.map((side) => all[isAcross(side) ? "width" : "height"]);
  }

  fields() {
    if (!this.sized) return null;
    const { shape } = this;
    const asked = { edit: shape.dataset.sides, ...keyOf(shape), ...this.places() };
    return () => asked;
  }

  // A rectangle by its place and sizes, another shape by how far its sides are dragged.
  places() {
    const { left, right, bottom, top } = this.sized;
    if (this.shape.dataset.sides !== "reshape_opening") {
      const sizes = { width: this.text("width", right - left), height: this.text("height", top - bottom) };
      return { shape: "rect", x: this.say.typed(left), y: this.say.typed(bottom), ...sizes };
    }
    const by = Object.fromEntries(this.sides.map((side) => [isAcross(side) ? "dx" : "dy", this.sized[side] - this.box[side]]));
    const side = [...this.sides].sort((a, b) => isAcross(a) - isAcross(b)).join(" ");
    return { side, dx: this.say.typed(by.dx ?? 0), dy: this.say.typed(by.dy ?? 0) };
  }
}

function isAcross(side) {
  return side === "left" || side === "right";
}

function outward(side) {
  return side === "left" || side === "bottom" ? -1 : 1;
}
