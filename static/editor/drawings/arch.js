// A rectangle first, then how far its arch rises.

import { Box } from "./box.js";

export class Arch extends Box {
  get limit() {
    return 3;
  }

  beyond(met) {
    if (this.points.length === 1) return super.beyond(met);
    return { x: met.x, y: this.top() - this.rise(this.held("rise", this.top() - met.y)) };
  }

  measured() {
    if (this.points.length < 2) return super.measured();
    return [{ name: "rise", words: "Rise", value: this.at ? this.top() - this.at.y : 0 }];
  }

  // At most half the width, as an arch's sides stand upright.
  rise(wanted) {
    const { width, height } = this.size(this.points);
    return Math.min(width / 2, height, Math.max(1 / 16, wanted));
  }

  top() {
    return Math.max(this.points[0].y, this.points[1].y);
  }

  path([a, b, c]) {
    if (!c) return super.path([a, b]);
    const [left, right, foot, top] = [Math.min(a.x, b.x), Math.max(a.x, b.x), Math.min(a.y, b.y), Math.max(a.y, b.y)];
    const radius = ((right - left) ** 2 / 4 + (top - c.y) ** 2) / (2 * (top - c.y));
    return `M${left} ${this.y(foot)}V${this.y(c.y)}A${radius} ${radius} 0 0 1 ${right} ${this.y(c.y)}V${this.y(foot)}Z`;
  }

  fields() {
    const points = this.isDone ? this.points : [...this.points, { ...this.at, typed: this.locks }];
    return points.length === 3 && (this.isDone || this.at) ? this.asking(points) : null;
  }

  placed(points) {
    const rise = this.top() - points[2].y;
    return { ...super.placed(points), rise: this.said(points[2].typed, "rise", rise) };
  }
}
