// Moves a corner of the outline, of a polygon or of a line.

import { Gesture } from "./gesture.js";

export class MovePoint extends Gesture {
  constructor(tools, event, shape) {
    super(tools);
    this.shape = shape;
    this.index = Number(event.target.closest(".handle").dataset.point);
    this.points = JSON.parse(shape.dataset.points);
    this.point = null;
  }

  follow(at, event) {
    const met = this.snap.point(at, this.snap.reach(event), this.shape.dataset.thing);
    this.point = { ...met, x: this.held("x", met.x), y: this.held("y", met.y) };
    this.points[this.index] = [this.point.x, this.point.y];
    this.ghost ??= this.ghosts.shape("path");
    this.ghosts.trace(this.ghost, this.points, !this.shape.classList.contains("is-line"));
    this.snap.show(met.hits);
    this.say.point(this.point);
  }

  sizes() {
    const [x, y] = this.points[this.index];
    return [
      { name: "x", words: "Across", value: x },
      { name: "y", words: "Up", value: y },
    ];
  }

  fields() {
    if (!this.point) return null;
    const place = { point: String(this.index), x: this.text("x", this.point.x), y: this.text("y", this.point.y) };
    const edit = this.shape.dataset.bends;
    const asked = edit === "move_point" ? { edit, ...place } : { edit, thing: this.shape.dataset.thing, ...place };
    return () => asked;
  }
}
