// Moves a thing. A direction in which the hand stays still is left as it is.

import { keyOf, placed } from "./fields.js";

const STILL = 3;

export class Move {
  constructor(tools, event, shape) {
    Object.assign(this, tools);
    this.shape = shape;
    this.start = tools.frame.face(event);
    this.down = event;
    const [x, y, width, height] = JSON.parse(shape.dataset.box);
    this.box = { left: x, right: x + width, bottom: y, top: y + height };
    this.by = null;
  }

  move(at, event) {
    this.by = this.snap.moved(this.box, this.wanted(at, event), this.snap.reach(event));
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

  fields() {
    return this.by && moveOf(this, this.shape, this.by.dx, this.by.dy);
  }

  drop() {
    this.ghost?.remove();
  }
}

// A move as the edit that the server gave for this kind of thing: by a distance, or to a place this far from where the
// thing stands when the write is sent.
export function moveOf({ say, things }, shape, dx, dy) {
  const edit = shape.dataset.moves;
  if (edit.startsWith("move_")) return () => ({ edit, ...keyOf(shape), dx: say.typed(dx), dy: say.typed(dy) });
  return () => {
    const [x, y, width, height] = JSON.parse((things.find(shape.dataset.thing) ?? shape).dataset.box);
    const box = { left: x + dx, right: x + dx + width, bottom: y + dy, top: y + dy + height };
    return { edit, ...keyOf(shape), ...placed(say, box) };
  };
}
