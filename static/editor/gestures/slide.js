// The pole slides the courses, the tape the bond: the field's origin moves by the same distance.

import { Gesture } from "./gesture.js";

export class Slide extends Gesture {
  constructor(tools, event, strip) {
    super(tools);
    this.isUp = strip.dataset.slides === "y";
    this.start = tools.frame.face(event);
    this.delta = null;
  }

  follow(at) {
    this.delta = this.held("by", this.snap.onTape(this.isUp ? at.y - this.start.y : at.x - this.start.x));
    this.ghost ??= this.ghosts.shape("rect");
    this.ghosts.place(this.ghost, this.line());
    this.say.slid(this.isUp, this.delta);
  }

  line() {
    const [x, y] = this.origin();
    const { width, height } = JSON.parse(this.svg.querySelector("#layer-things").dataset.home).panel;
    if (this.isUp) return { left: 0, right: width, bottom: y + this.delta, top: y + this.delta };
    return { left: x + this.delta, right: x + this.delta, bottom: 0, top: height };
  }

  // Where the field starts by the time that it is asked.
  origin() {
    return JSON.parse(this.svg.querySelector(".slider").dataset.origin);
  }

  sizes() {
    const words = this.isUp ? (this.delta < 0 ? "Down" : "Up") : this.delta < 0 ? "Left" : "Right";
    return [{ name: "by", words, value: Math.abs(this.delta ?? 0) }];
  }

  fields() {
    if (this.delta === null) return null;
    return () => {
      const [x, y] = this.origin();
      const across = this.say.typed(x + (this.isUp ? 0 : this.delta));
      return { edit: "set_origin", part: "field", x: across, y: this.say.typed(y + (this.isUp ? this.delta : 0)) };
    };
  }
}
