// Something new being drawn, point by point: a press takes a point, and so does letting go after a drag. A kind says what
// its points make: `limit` of them, `next(points, at)` where the next may lie, `path(points)`, `sizes(points)`, `fields`.

import { Gesture } from "../gestures/gesture.js";

const DRAGGED = 6;

export class Drawing extends Gesture {
  constructor(tools, asked) {
    super(tools);
    this.asked = asked;
    this.points = [];
    this.at = null;
    this.pressed = null;
    this.isDone = false;
  }

  press(at, event) {
    this.move(at, event);
    this.pressed = event;
    this.take(event);
  }

  follow(at, event) {
    const met = this.snap.point(at, this.snap.reach(event));
    this.at = this.next(met);
    this.trace();
    this.snap.show(met.hits);
    this.say.drawn(this.sizes(), met.hits);
  }

  release(at, event) {
    const { pressed } = this;
    this.pressed = null;
    if (!pressed || this.isDone) return;
    const dragged = Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY);
    if (dragged < DRAGGED) return;
    this.move(at, event);
    this.take(event, true);
  }

  // Takes the place that is shown as the next point; sizes typed for it are used up.
  take() {
    if (!this.at) return;
    if (!this.isSound()) return this.say.words("Too small to be drawn: move on, or type a size");
    this.points.push({ ...this.at, typed: { ...this.locks } });
    this.locks = {};
    if (this.points.length === this.limit) this.isDone = true;
    else this.at = null;
  }

  enter() {
    this.take();
    if (!this.isDone) this.follow(...this.last);
    return this.isDone;
  }

  // Without a hand that points anywhere, sizes go to the right and up.
  held(name, value) {
    return super.held(name, this.last?.[1].isTyped ? Math.abs(value) : value);
  }

  reopen() {
    this.isDone = false;
    if (this.points.length === this.limit) this.points.pop();
    this.follow(...this.last);
  }

  // The second finger takes the point back that its first had put.
  unpress() {
    if (this.pressed) this.back();
    this.pressed = null;
  }

  back() {
    if (Object.keys(this.locks).length > 0) {
      this.locks = {};
      if (this.last) this.follow(...this.last);
      return true;
    }
    if (this.points.length === 0) return false;
    this.points.pop();
    if (this.last) this.follow(...this.last);
    return true;
  }

  trace() {
    this.ghost ??= this.ghosts.shape("path");
    this.ghost.setAttribute("d", this.path([...this.points, this.at]));
  }

  // The first point is typed as a place of the face.
  sizes() {
    if (this.points.length > 0) return this.measured();
    return [
      { name: "x", words: "Across", value: this.at?.x ?? 0 },
      { name: "y", words: "Up", value: this.at?.y ?? 0 },
    ];
  }

  next(met) {
    if (this.points.length > 0) return this.beyond(met);
    return { x: this.locks.x?.inches ?? met.x, y: this.locks.y?.inches ?? met.y };
  }

  isSound() {
    return true;
  }

  get limit() {
    return 2;
  }

  // What was typed for the point as it was taken, else the number in words.
  said(typed, name, value) {
    const lock = typed?.[name];
    return lock && lock.inches === value ? lock.text : this.say.typed(value);
  }

  // Down the page, as the drawing counts.
  y(value) {
    return this.frame.height - value;
  }
}
