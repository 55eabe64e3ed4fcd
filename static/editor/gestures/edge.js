// Moves one edge of the outline or of a polygon, both its corners together; a level edge only up and down, an upright one
// only sideways.

import { Gesture } from "./gesture.js";

export class MoveEdge extends Gesture {
  constructor(tools, event, shape) {
    super(tools);
    this.shape = shape;
    this.start = tools.frame.face(event);
    this.points = JSON.parse(shape.dataset.points);
    this.edge = nearestEdge(this.points, this.start).edge;
    this.by = null;
  }

  follow(at, event) {
    const [a, b] = ends(this.points, this.edge);
    const [isUpright, isLevel] = [a[0] === b[0], a[1] === b[1]];
    const box = { left: Math.min(a[0], b[0]), right: Math.max(a[0], b[0]), bottom: Math.min(a[1], b[1]), top: Math.max(a[1], b[1]) };
    const wanted = { dx: isLevel ? null : at.x - this.start.x, dy: isUpright ? null : at.y - this.start.y };
    const met = this.snap.moved(box, wanted, this.snap.reach(event), this.shape.dataset.thing);
    this.by = { ...met, dx: isLevel ? 0 : this.held("dx", met.dx), dy: isUpright ? 0 : this.held("dy", met.dy) };
    this.show();
  }

  show() {
    const next = (this.edge + 1) % this.points.length;
    const moved = this.points.map(([x, y], k) => (k === this.edge || k === next ? [x + this.by.dx, y + this.by.dy] : [x, y]));
    this.ghost ??= this.ghosts.shape("path");
    this.ghosts.trace(this.ghost, moved, true);
    this.snap.show(this.by.hits);
    this.say.moved(this.by);
  }

  sizes() {
    const [a, b] = ends(this.points, this.edge);
    const { dx = 0, dy = 0 } = this.by ?? {};
    const across = { name: "dx", words: dx < 0 ? "Left" : "Right", value: Math.abs(dx) };
    const up = { name: "dy", words: dy < 0 ? "Down" : "Up", value: Math.abs(dy) };
    return [...(a[1] === b[1] ? [] : [across]), ...(a[0] === b[0] ? [] : [up])];
  }

  fields() {
    if (!this.by || (!this.by.dx && !this.by.dy)) return null;
    const { thing } = this.shape.dataset;
    const asked = { edit: "move_edge", thing, edge: String(this.edge), dx: this.text("dx", this.by.dx), dy: this.text("dy", this.by.dy) };
    return () => asked;
  }
}

// The edge of a closed ring that passes nearest to a place: {edge, off}, in inches.
export function nearestEdge(points, at) {
  const offs = points.map((_, edge) => ({ edge, off: away(at, ...ends(points, edge)) }));
  return offs.reduce((best, one) => (one.off < best.off ? one : best));
}

function ends(points, edge) {
  return [points[edge], points[(edge + 1) % points.length]];
}

function away(at, [ax, ay], [bx, by]) {
  const [dx, dy] = [bx - ax, by - ay];
  const along = Math.max(0, Math.min(1, ((at.x - ax) * dx + (at.y - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(at.x - ax - along * dx, at.y - ay - along * dy);
}
