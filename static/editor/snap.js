// Snapping to the lines that the server gave: where an opening's four sides meet whole brick. A hit is
// {axis, at, kind, name}; what is committed is the very place that was shown.

const MOUSE_REACH = 12;
const FINGER_REACH = 26;
const SIDES = { x: ["left", "right"], y: ["bottom", "top"] };

export class Snap {
  constructor(svg, frame) {
    this.svg = svg;
    this.frame = frame;
    this.read();
  }

  read() {
    this.lines = JSON.parse(this.svg.querySelector("#snap").dataset.lines);
  }

  // How far a pointer's event reaches, in inches of the face; Alt releases.
  reach(event) {
    if (event.altKey) return 0;
    return (event.pointerType === "touch" ? FINGER_REACH : MOUSE_REACH) * this.frame.inchesPerPixel();
  }

  // The place that a point is meant to have: {x, y, hits}.
  point(at, reach) {
    const [across, up] = ["x", "y"].map((axis) => this.first(axis, at[axis], reach));
    return { x: across ? across.at : this.onTape(at.x), y: up ? up.at : this.onTape(at.y), hits: met(across, up) };
  }

  // A box moved by {dx, dy}, null where it stays: {dx, dy, hits}.
  moved(box, { dx, dy }, reach) {
    const across = this.shifted("x", box, dx, reach);
    const up = this.shifted("y", box, dy, reach);
    return { dx: across.delta, dy: up.delta, hits: met(across.hit, up.hit) };
  }

  // One side of a box: {at, hit}, hit null where it meets nothing.
  side(side, value, reach) {
    const hit = this.nearest(side, value, reach);
    return { at: hit ? hit.at : this.onTape(value), hit };
  }

  // The line nearest to `value` for a side, or null beyond `reach`.
  nearest(side, value, reach) {
    let best = null;
    const [words, first, places] = this.lines[side];
    const axis = SIDES.x.includes(side) ? "x" : "y";
    places.forEach((at, k) => {
      const off = Math.abs(at - value);
      if (off > reach || (best !== null && off >= best.off)) return;
      best = { axis, at, kind: first === null ? "head joint" : "course", off, name: first === null ? words : `${words} ${first + k}` };
    });
    return best;
  }

  first(axis, value, reach) {
    const [low, high] = SIDES[axis];
    return this.nearest(low, value, reach) ?? this.nearest(high, value, reach);
  }

  // The better of the two sides of one axis.
  shifted(axis, box, delta, reach) {
    if (delta === null) return { delta: 0, hit: null };
    const hits = SIDES[axis].map((side) => [box[side], this.nearest(side, box[side] + delta, reach)]).filter(([, hit]) => hit);
    if (hits.length === 0) return { delta: this.onTape(delta), hit: null };
    const [from, hit] = hits.sort((a, b) => a[1].off - b[1].off)[0];
    return { delta: hit.at - from, hit };
  }

  show(_hits) {}

  clear() {}

  // To the tape's smallest mark: a sixteenth of an inch, or a millimetre.
  onTape(value) {
    const marks = this.svg.dataset.unit === "mm" ? 25.4 : 16;
    return Math.round(value * marks) / marks;
  }
}

function met(...hits) {
  return hits.filter((hit) => hit !== null);
}
