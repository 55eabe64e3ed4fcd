// Gives an arch its rise: the springing moves, the crown stays.

import { boxOf } from "./fields.js";
import { Gesture } from "./gesture.js";

export class Rise extends Gesture {
  constructor(tools, _event, shape) {
    super(tools);
    this.shape = shape;
    this.box = boxOf(shape);
    this.rise = null;
  }

  follow(at, event) {
    const { left, right, bottom, top } = this.box;
    const most = Math.min((right - left) / 2, top - bottom);
    const met = this.snap.side("top", at.y, this.snap.reach(event), this.shape.dataset.thing);
    this.rise = Math.min(most, Math.max(1 / 16, this.held("rise", top - met.at)));
    this.ghost ??= this.ghosts.shape("rect");
    this.ghosts.place(this.ghost, { left, right, bottom: top - this.rise, top });
    this.say.rise(this.rise);
  }

  sizes() {
    return [{ name: "rise", words: "Rise", value: this.rise ?? Number(this.shape.dataset.rise) }];
  }

  fields() {
    if (this.rise === null) return null;
    const asked = { edit: "set_rise", opening: this.shape.dataset.mark, rise: this.text("rise", this.rise) };
    return () => asked;
  }
}
