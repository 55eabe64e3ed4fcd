// A circle from its centre outward.

import { Drawing } from "./drawing.js";

const LEAST = 0.5;

export class Circle extends Drawing {
  beyond(met) {
    const [centre] = this.points;
    const away = Math.hypot(met.x - centre.x, met.y - centre.y) || 1;
    const radius = this.locks.radius?.inches ?? this.snap.onTape(away);
    return { x: centre.x + ((met.x - centre.x) / away) * radius, y: centre.y + ((met.y - centre.y) / away) * radius, radius };
  }

  measured() {
    return [{ name: "radius", words: "Radius", value: this.at?.radius ?? 0 }];
  }

  isSound() {
    return this.points.length === 0 || this.at.radius >= LEAST;
  }

  path([centre, rim]) {
    if (!rim) return "";
    const { radius } = rim;
    const y = this.y(centre.y);
    return `M${centre.x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`;
  }

  fields() {
    const points = this.isDone ? this.points : [...this.points, { ...this.at, typed: this.locks }];
    if (points.length !== 2 || !(points[1].radius >= LEAST)) return null;
    const [centre, rim] = points;
    const asked = {
      edit: this.asked.edit,
      ...this.asked.values,
      x: this.said(centre.typed, "x", centre.x),
      y: this.said(centre.typed, "y", centre.y),
      radius: this.said(rim.typed, "radius", rim.radius),
    };
    return () => asked;
  }
}
