// A polygon or a line, corner by corner. A polygon is closed by pressing its first corner again or by Enter, a line ends at
// Enter or where its last corner is pressed again; a line that is dragged has two ends and is done.

import { Drawing } from "./drawing.js";

export class Corners extends Drawing {
  get limit() {
    return Infinity;
  }

  get isLine() {
    return this.asked.kind === "line";
  }

  get least() {
    return this.isLine ? 2 : 3;
  }

  follow(at, event) {
    this.reach = this.snap.reach(event);
    this.near = this.snap.near(event);
    this.hand = at;
    super.follow(at, event);
  }

  press(at, event) {
    this.move(at, event);
    this.pressed = event;
    if (this.isMeantAsEnd()) this.isDone = true;
    else this.take();
  }

  isMeantAsEnd() {
    if (this.points.length < this.least) return false;
    const end = this.isLine ? this.points.at(-1) : this.points[0];
    return Math.hypot(this.at.x - end.x, this.at.y - end.y) <= this.near;
  }

  take(_event, isDragged = false) {
    super.take();
    if (isDragged && this.isLine && this.points.length === 2) this.isDone = true;
  }

  enter() {
    if (Object.keys(this.locks).length > 0 || this.points.length === 0) this.take();
    else if (this.points.length >= this.least) this.isDone = true;
    if (!this.isDone) this.follow(...this.last);
    return this.isDone;
  }

  isSound() {
    const last = this.points.at(-1);
    return !last || Math.hypot(this.at.x - last.x, this.at.y - last.y) > 1e-6;
  }

  // Level with the last corner, or straight over it, within half the reach, or the whole where nothing else was met.
  beyond(met) {
    const last = this.points.at(-1);
    return this.typedFrom(last, { x: this.straight("x", met, last), y: this.straight("y", met, last) });
  }

  straight(axis, met, last) {
    const off = Math.abs(this.hand[axis] - last[axis]);
    const isMet = met.hits.some((hit) => hit.axis === axis);
    return off <= (isMet ? this.reach / 2 : this.reach) ? last[axis] : met[axis];
  }

  typedFrom(last, { x, y }) {
    const length = this.locks.length?.inches;
    if (length === undefined) return { x: last.x + this.held("dx", x - last.x), y: last.y + this.held("dy", y - last.y) };
    if (this.last[1].isTyped) return { x: last.x + length, y: last.y };
    const away = Math.hypot(x - last.x, y - last.y) || 1;
    return { x: last.x + ((x - last.x) / away) * length, y: last.y + ((y - last.y) / away) * length };
  }

  measured() {
    const last = this.points.at(-1);
    const [dx, dy] = last && this.at ? [this.at.x - last.x, this.at.y - last.y] : [0, 0];
    return [
      { name: "length", words: "Length", value: Math.hypot(dx, dy) },
      { name: "dx", words: dx < 0 ? "Left" : "Right", value: Math.abs(dx) },
      { name: "dy", words: dy < 0 ? "Down" : "Up", value: Math.abs(dy) },
    ];
  }

  path(points) {
    const seen = points.filter(Boolean);
    const line = `M${seen.map(({ x, y }) => `${x} ${this.y(y)}`).join("L")}`;
    return this.isLine || seen.length < 3 ? line : `${line}Z`;
  }

  fields() {
    const points = this.isDone || !this.at || !this.isSound() ? this.points : [...this.points, this.at];
    if (points.length < this.least) return null;
    const text = points.map((point) => `${this.said(point.typed, "x", point.x)}, ${this.said(point.typed, "y", point.y)}`).join("; ");
    const asked = { edit: this.asked.edit, ...this.asked.values, [this.isLine ? "line" : "points"]: text };
    return () => asked;
  }
}
