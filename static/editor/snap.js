// Snapping to the lines that the server gave: where an opening's four sides meet whole brick.

export class Snap {
  constructor(svg) {
    this.svg = svg;
    this.read();
  }

  read() {
    this.lines = JSON.parse(this.svg.querySelector("#snap").dataset.lines);
  }

  // The line nearest to `value` for a side ("left", "right", "bottom", "top"), or null beyond `reach`.
  nearest(side, value, reach) {
    let best = null;
    const [words, first, places] = this.lines[side];
    places.forEach((at, k) => {
      const off = Math.abs(at - value);
      if (off <= reach && (best === null || off < best.off)) best = { at, off, name: first === null ? words : `${words} ${first + k}` };
    });
    return best;
  }

  // The better of two sides of one axis for a box moved by `delta`: { delta, hit }.
  moved(low, high, delta, sides, reach) {
    const hits = [
      [low, this.nearest(sides[0], low + delta, reach)],
      [high, this.nearest(sides[1], high + delta, reach)],
    ].filter(([, hit]) => hit !== null);
    hits.sort((a, b) => a[1].off - b[1].off);
    if (hits.length === 0) return { delta: onTape(delta, this.svg.dataset.unit), hit: null };
    const [from, hit] = hits[0];
    return { delta: hit.at - from, hit };
  }
}

// To the tape's smallest mark: a sixteenth of an inch, or a millimetre.
export function onTape(value, unit) {
  const marks = unit === "mm" ? 25.4 : 16;
  return Math.round(value * marks) / marks;
}
