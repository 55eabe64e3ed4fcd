// Where the hand is meant to be: the corner, line or equal gap that it comes near. A hit is {axis, at, kind, name}; what is
// committed is the very place that was shown. The sides of an opening meet whole brick at lines that come with the drawing;
// all else is asked for when the hand rests.

import { equalGaps } from "./snap_gaps.js";
import { Marks } from "./snap_marks.js";

const MOUSE_REACH = 12;
const FINGER_REACH = 26;
const REST = 350;
const SIDES = { x: ["left", "right"], y: ["bottom", "top"] };
const FIRST = new Set(["edge", "opening", "strip", "middle", "neighbour", "gap"]);
const BRICK = new Set(["course", "head joint", "half bat", "neighbour course"]);
const ORDER = ["edge", "opening", "strip", "course", "head joint", "half bat", "neighbour", "neighbour course", "middle", "gap"];

export class Snap {
  constructor(svg, frame, address) {
    Object.assign(this, { svg, frame, address });
    this.marks = new Marks(svg, frame);
    this.switch = document.getElementById("snaps");
    this.lines = [];
    this.corners = [];
    this.revision = 0;
    this.read();
  }

  // After an edit: the lines that came with it now, the others when the hand rests.
  read() {
    this.sides = JSON.parse(this.svg.querySelector("#snap").dataset.lines);
    clearTimeout(this.later);
    this.later = setTimeout(() => this.load(), REST);
  }

  async load() {
    try {
      const answer = await fetch(this.address);
      if (!answer.ok) return;
      const { revision, lines, corners } = await answer.json();
      if (revision < this.revision) return;
      this.revision = revision;
      this.lines = lines.map(([axis, at, kind, name, of]) => ({ axis, at, kind, name, of }));
      this.corners = corners.map(([x, y, name, of]) => ({ x, y, name, of }));
      this.svg.dataset.meets = String(lines.length);
    } catch {
      // Without an answer the lines that are known serve on.
    }
  }

  // How far a pointer's event reaches, in inches of the face; Alt releases, and so does the switch for a finger.
  reach(event) {
    return event.altKey || !this.switch.checked ? 0 : this.near(event);
  }

  // What lies under a pointer, in inches of the face, whether or not lines are met.
  near(event) {
    return (event.pointerType === "touch" ? FINGER_REACH : MOUSE_REACH) * this.frame.inchesPerPixel();
  }

  // The place that a point is meant to have: {x, y, hits}; a corner before lines.
  point(at, reach, own = "") {
    const corner = this.corner(at, reach, own);
    if (corner) return { x: corner.x, y: corner.y, hits: [{ ...corner, kind: "corner" }] };
    const hits = ["x", "y"].map((axis) => this.pick(this.meeting(axis, own, [at[axis]]), 0, reach));
    const [x, y] = ["x", "y"].map((axis, k) => (hits[k] ? hits[k].hit.at : this.onTape(at[axis])));
    return { x, y, hits: hits.filter(Boolean).map(({ hit }) => hit) };
  }

  // A box moved by {dx, dy}, null where it stays: {dx, dy, hits}.
  moved(box, { dx, dy }, reach, own = "") {
    const across = this.shifted("x", { ...box, bottom: box.bottom + dy, top: box.top + dy }, dx, reach, own);
    const up = this.shifted("y", { ...box, left: box.left + dx, right: box.right + dx }, dy, reach, own);
    return { dx: across.delta, dy: up.delta, hits: [across.hit, up.hit].filter(Boolean) };
  }

  // One side of a box: {at, hit}, hit null where it meets nothing.
  side(side, value, reach, own = "") {
    const axis = SIDES.x.includes(side) ? "x" : "y";
    const found = this.pick([...this.siding(side, value), ...this.meeting(axis, own, [value], !isBrick(own))], 0, reach);
    return found ? { at: found.hit.at, hit: found.hit } : { at: this.onTape(value), hit: null };
  }

  // The nearest place at which a box meets a line farther on, as a move; null where there is none.
  next(box, axis, way, own) {
    const found = this.candidates(axis, box, own)
      .map((one) => ({ ...one, delta: one.hit.at - one.from }))
      .filter(({ delta }) => delta * way > 1 / 64)
      .sort((a, b) => Math.abs(a.delta) - Math.abs(b.delta))[0];
    return found ?? null;
  }

  shifted(axis, box, delta, reach, own) {
    if (delta === null) return { delta: 0, hit: null };
    const found = this.pick(this.candidates(axis, box, own, delta), delta, reach);
    return found ? { delta: found.hit.at - found.from, hit: found.hit } : { delta: this.onTape(delta), hit: null };
  }

  // Every line that a box could come to meet along one axis, and what of the box would meet it.
  candidates(axis, box, own, delta = 0) {
    const [low, high] = SIDES[axis];
    const ends = [...new Set([box[low], box[high]])];
    const brick = isBrick(own) ? [] : SIDES[axis].flatMap((side) => this.siding(side, box[side]));
    const drawn = this.meeting(axis, own, ends, !isBrick(own));
    const middle = this.lines.filter((line) => line.axis === axis && line.kind === "middle" && !isOwn(line, own));
    const centred = middle.map((hit) => ({ from: (box[low] + box[high]) / 2, hit }));
    const gaps = own.startsWith("openings/") ? equalGaps(this.svg, axis, box, delta, own) : [];
    return [...brick, ...drawn, ...centred, ...gaps];
  }

  // Lines for values that meet them with their own edge; `drawn` leaves those of the brick out.
  meeting(axis, own, values, drawn = false) {
    const lines = this.lines.filter(
      (line) => line.axis === axis && !isOwn(line, own) && !(drawn && (BRICK.has(line.kind) || line.kind === "middle")),
    );
    if (this.lines.length === 0 && !drawn) return SIDES[axis].flatMap((side) => values.flatMap((value) => this.siding(side, value)));
    return lines.flatMap((hit) => values.map((from) => ({ from, hit })));
  }

  // Where this side of an opening meets whole brick.
  siding(side, value) {
    const [words, first, places] = this.sides[side];
    const axis = SIDES.x.includes(side) ? "x" : "y";
    const kind = first === null ? "head joint" : "course";
    return places.map((at, k) => ({ from: value, hit: { axis, at, kind, name: first === null ? words : `${words} ${first + k}` } }));
  }

  // What is drawn goes before brick within half the reach, else the nearest.
  pick(candidates, delta, reach) {
    const near = candidates.map((one) => ({ ...one, off: Math.abs(one.hit.at - one.from - delta) })).filter(({ off }) => off <= reach);
    const first = near.filter(({ hit, off }) => FIRST.has(hit.kind) && off <= reach / 2);
    const among = first.length > 0 ? first : near;
    return among.sort((a, b) => (Math.abs(a.off - b.off) > 1e-6 ? a.off - b.off : rank(a) - rank(b)))[0] ?? null;
  }

  corner(at, reach, own) {
    const near = this.corners
      .filter((corner) => !isOwn(corner, own))
      .map((corner) => ({ ...corner, off: Math.hypot(corner.x - at.x, corner.y - at.y) }));
    return near.filter(({ off }) => off <= reach).sort((a, b) => a.off - b.off)[0] ?? null;
  }

  show(hits) {
    this.marks.show(hits);
  }

  clear() {
    this.marks.clear();
  }

  // To the tape's smallest mark: a sixteenth of an inch, or a millimetre.
  onTape(value) {
    const marks = this.svg.dataset.unit === "mm" ? 25.4 : 16;
    return Math.round(value * marks) / marks;
  }
}

// Strips, fixing lines and edges meet the brick itself, openings and zones with a joint between.
function isBrick(own) {
  return own !== "" && !own.startsWith("openings/") && !own.startsWith("zones/");
}

function isOwn({ of }, own) {
  return own !== "" && of === own;
}

function rank({ hit }) {
  return ORDER.indexOf(hit.kind);
}
