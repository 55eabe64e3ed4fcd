// Moves a thing. A direction in which the hand stays still is left as it is.

import { boxOf, keyOf } from "./fields.js";
import { Gesture } from "./gesture.js";

const STILL = 3;

export class Move extends Gesture {
  constructor(tools, event, shape) {
    super(tools);
    this.shape = shape;
    this.start = tools.frame.face(event);
    this.down = event;
    this.box = boxOf(shape);
    this.by = null;
  }

  follow(at, event) {
    const met = this.snap.moved(this.box, this.wanted(at, event), this.snap.reach(event), this.shape.dataset.thing);
    this.by = { ...met, dx: this.held("dx", met.dx), dy: this.held("dy", met.dy) };
    this.ghost ??= this.ghosts.copy(this.shape);
    this.ghost.setAttribute("transform", `translate(${this.by.dx} ${-this.by.dy})`);
    this.snap.show(this.by.hits);
    this.say.moved(this.by);
  }

  wanted(at, event) {
    const sideways = Math.abs(event.clientX - this.down.clientX) >= STILL;
    const upways = Math.abs(event.clientY - this.down.clientY) >= STILL;
    return { dx: sideways ? at.x - this.start.x : null, dy: upways ? at.y - this.start.y : null };
  }

  sizes() {
    const { dx = 0, dy = 0 } = this.by ?? {};
    return [
      { name: "dx", words: dx < 0 ? "Left" : "Right", value: Math.abs(dx) },
      { name: "dy", words: dy < 0 ? "Down" : "Up", value: Math.abs(dy) },
    ];
  }

  fields() {
    return this.by && moveOf(this.things, this.shape, this.text("dx", this.by.dx), this.text("dy", this.by.dy));
  }
}

// A move as the edit that the server gave for this kind of thing; openings that are chosen together move together.
export function moveOf(things, shape, dx, dy) {
  const together = things.keys.filter((key) => key.startsWith("openings/"));
  if (together.length > 1 && together.includes(shape.dataset.thing)) {
    const marks = together.map((key) => key.slice("openings/".length)).join(", ");
    return () => ({ edit: "move_openings", marks, dx, dy });
  }
  return () => ({ edit: shape.dataset.moves, ...keyOf(shape), dx, dy });
}
