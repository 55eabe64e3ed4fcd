// A rectangle, corner to corner.

import { Drawing } from "./drawing.js";

const LEAST = 1;

export class Box extends Drawing {
  beyond(met) {
    const [from] = this.points;
    return { x: from.x + this.held("width", met.x - from.x), y: from.y + this.held("height", met.y - from.y) };
  }

  measured() {
    const { width, height } = this.size();
    return [
      { name: "width", words: "Width", value: width },
      { name: "height", words: "Height", value: height },
    ];
  }

  size(points = [...this.points, this.at]) {
    const [a, b] = points;
    return a && b ? { width: Math.abs(b.x - a.x), height: Math.abs(b.y - a.y) } : { width: 0, height: 0 };
  }

  isSound() {
    if (this.points.length !== 1) return true;
    const { width, height } = this.size();
    return width >= LEAST && height >= LEAST;
  }

  path([a, b]) {
    return b ? `M${a.x} ${this.y(a.y)}H${b.x}V${this.y(b.y)}H${a.x}Z` : "";
  }

  fields() {
    if (!this.isDone) return this.points.length === 1 && this.isSound() ? this.asking([...this.points, { ...this.at, typed: this.locks }]) : null;
    return this.asking(this.points);
  }

  asking(points) {
    const asked = { edit: this.asked.edit, ...this.asked.values, ...this.placed(points) };
    return () => asked;
  }

  placed([a, b]) {
    const { width, height } = this.size([a, b]);
    return {
      x: b.x < a.x ? this.say.typed(b.x) : this.said(a.typed, "x", a.x),
      y: b.y < a.y ? this.say.typed(b.y) : this.said(a.typed, "y", a.y),
      width: this.said(b.typed, "width", width),
      height: this.said(b.typed, "height", height),
    };
  }
}
