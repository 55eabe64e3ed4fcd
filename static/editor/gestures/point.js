// Moves a corner of the outline.

const NEAR = 6;

export class MovePoint {
  constructor(tools, event) {
    Object.assign(this, tools);
    this.index = event.target.closest(".handle").dataset.point;
    this.point = null;
  }

  move(at, event) {
    this.point = this.snap.point(at, this.snap.reach(event));
    const { x, y, hits } = this.point;
    const reach = this.frame.inchesPerPixel() * NEAR;
    this.ghost ??= this.ghosts.shape("rect");
    this.ghosts.place(this.ghost, { left: x - reach, right: x + reach, bottom: y - reach, top: y + reach });
    this.snap.show(hits);
    this.say.place(this.point);
  }

  fields() {
    const { point, index, say } = this;
    return point && (() => ({ edit: "move_point", point: index, x: say.typed(point.x), y: say.typed(point.y) }));
  }

  drop() {
    this.ghost?.remove();
  }
}
