// Pointer gestures on the drawing: choose, move, resize, move a point, draw, pan, zoom. A gesture commits on pointer-up;
// Escape or a second finger drops it. While it lasts only a dashed ghost moves.

import { onTape } from "./snap.js";

const MOUSE_REACH = 12;
const FINGER_REACH = 26;
const STILL = 3;

export class Gestures {
  constructor(svg, frame, things, writes, snap, say) {
    Object.assign(this, { svg, frame, things, writes, snap, say });
    this.ghosts = svg.querySelector("#ghost");
    this.gesture = null;
    this.drawing = null;
    this.pointers = new Map();
    svg.addEventListener("pointerdown", (event) => this.down(event));
    svg.addEventListener("pointermove", (event) => this.move(event));
    svg.addEventListener("pointerup", (event) => this.up(event));
    svg.addEventListener("pointercancel", (event) => this.cancel(event));
    svg.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
  }

  down(event) {
    if (event.button > 1) return;
    this.pointers.set(event.pointerId, event);
    if (this.pointers.size > 1) return this.drop();
    this.svg.setPointerCapture(event.pointerId);
    this.gesture = this.begin(event);
  }

  begin(event) {
    const start = this.frame.face(event);
    const base = { start, event, sent: false };
    if (event.button === 1) return { ...base, kind: "pan" };
    if (this.drawing) return { ...base, kind: "draw", from: this.snapped(start, event) };
    const handle = event.target.closest(".handle");
    if (handle) return { ...base, kind: handle.dataset.point ? "point" : "size", handle, shape: this.things.shape };
    const strip = event.target.closest(".slider");
    if (strip) return { ...base, kind: "slide", strip };
    const shape = event.target.closest("[data-thing]");
    if (shape && shape.dataset.thing === this.things.chosen && shape.dataset.moves) return { ...base, kind: "move", shape };
    return { ...base, kind: shape ? "choose" : "pan", shape };
  }

  move(event) {
    this.pointers.set(event.pointerId, event);
    const at = this.frame.face(event);
    const gesture = this.gesture;
    if (!gesture || this.pointers.size > 1) return this.say.place(at);
    const moved = Math.hypot(event.clientX - gesture.event.clientX, event.clientY - gesture.event.clientY);
    if (moved < 4 && !gesture.moved) return;
    gesture.moved = true;
    gesture.free = event.altKey;
    if (gesture.kind === "choose" && gesture.shape.dataset.moves) {
      this.things.choose(gesture.shape.dataset.thing);
      gesture.kind = "move";
    }
    this[`${gesture.kind}Ghost`]?.(gesture, at, event);
  }

  up(event) {
    this.pointers.delete(event.pointerId);
    const gesture = this.gesture;
    this.gesture = null;
    if (!gesture) return;
    if (!gesture.moved) {
      if (gesture.kind === "choose") this.things.choose(gesture.shape.dataset.thing);
      else if (gesture.kind === "pan") this.things.choose(null);
    }
    if (gesture.kind === "draw") this.stopDrawing();
    if (gesture.moved && gesture.values) this.commit(gesture.values, gesture.ghost);
    else gesture.ghost?.remove();
  }

  // The ghost stays until the answer stands in the drawing, so that nothing jumps back and forth.
  commit(values, ghost) {
    this.writes.edit(values).then(() => ghost?.remove());
  }

  cancel(event) {
    this.pointers.delete(event.pointerId);
    this.drop();
  }

  drop() {
    this.gesture?.ghost?.remove();
    this.gesture = null;
  }

  wheel(event) {
    event.preventDefault();
    this.frame.zoom(Math.exp(-event.deltaY * 0.0015), event.clientX, event.clientY);
  }

  onTape(value) {
    return onTape(value, this.svg.dataset.unit);
  }

  reach(event) {
    return (event.pointerType === "touch" ? FINGER_REACH : MOUSE_REACH) * this.frame.inchesPerPixel();
  }

  panGhost(gesture, _at, event) {
    const last = gesture.last ?? gesture.event;
    this.frame.pan(event.clientX - last.clientX, event.clientY - last.clientY);
    gesture.last = event;
  }

  moveGhost(gesture, at, event) {
    const [x, y, width, height] = JSON.parse(gesture.shape.dataset.box);
    const reach = gesture.free ? 0 : this.reach(event);
    const still = { delta: 0, hit: null };
    const sideways = Math.abs(event.clientX - gesture.event.clientX) >= STILL;
    const upways = Math.abs(event.clientY - gesture.event.clientY) >= STILL;
    const across = sideways ? this.snap.moved(x, x + width, at.x - gesture.start.x, ["left", "right"], reach) : still;
    const up = upways ? this.snap.moved(y, y + height, at.y - gesture.start.y, ["bottom", "top"], reach) : still;
    gesture.values = this.moveOf(gesture.shape, across.delta, up.delta);
    this.copyOf(gesture).setAttribute("transform", `translate(${across.delta} ${-up.delta})`);
    this.say.moved(across, up);
  }

  sizeGhost(gesture, at, event) {
    const [x, y, width, height] = JSON.parse(gesture.shape.dataset.box);
    const box = { left: x, right: x + width, bottom: y, top: y + height };
    const reach = gesture.free ? 0 : this.reach(event);
    const hits = gesture.handle.dataset.sides.split(" ").map((side) => {
      const free = side === "left" || side === "right" ? at.x : at.y;
      const hit = this.snap.nearest(side, free, reach);
      box[side] = hit ? hit.at : this.onTape(free);
      return hit;
    });
    if (box.right - box.left < 1 || box.top - box.bottom < 1) return;
    gesture.values = () => ({ edit: gesture.shape.dataset.sides, ...keyOf(gesture.shape), ...this.placed(box) });
    this.outlineGhost(gesture, box);
    this.say.sized(box, hits);
  }

  pointGhost(gesture, at, event) {
    const point = this.snapped(at, event);
    const place = { point: gesture.handle.dataset.point, x: this.say.typed(point.x), y: this.say.typed(point.y) };
    gesture.values = () => ({ edit: "move_point", ...place });
    const reach = this.frame.inchesPerPixel() * 6;
    this.outlineGhost(gesture, { left: point.x - reach, right: point.x + reach, bottom: point.y - reach, top: point.y + reach });
    this.say.place(point);
  }

  // The pole slides the courses, the tape the bond: the field's origin moves by the same distance.
  slideGhost(gesture, at) {
    const origin = () => JSON.parse(this.svg.querySelector(".slider").dataset.origin);
    const [x, y] = origin();
    const up = gesture.strip.dataset.slides === "y";
    const delta = this.onTape(up ? at.y - gesture.start.y : at.x - gesture.start.x);
    gesture.values = () => {
      const [from, foot] = origin();
      const place = { x: this.say.typed(from + (up ? 0 : delta)), y: this.say.typed(foot + (up ? delta : 0)) };
      return { edit: "set_origin", part: "field", ...place };
    };
    const { width, height } = JSON.parse(this.svg.querySelector("#layer-things").dataset.home).panel;
    if (up) this.outlineGhost(gesture, { left: 0, right: width, bottom: y + delta, top: y + delta });
    else this.outlineGhost(gesture, { left: x + delta, right: x + delta, bottom: 0, top: height });
    this.say.slid(up, delta);
  }

  drawGhost(gesture, at, event) {
    const to = this.snapped(at, event);
    const from = gesture.from;
    const box = {
      left: Math.min(from.x, to.x),
      right: Math.max(from.x, to.x),
      bottom: Math.min(from.y, to.y),
      top: Math.max(from.y, to.y),
    };
    if (box.right - box.left < 1 || box.top - box.bottom < 1) return;
    const { edit, values } = this.drawing;
    gesture.values = () => ({ edit, ...values, ...this.placed(box) });
    this.outlineGhost(gesture, box);
    this.say.sized(box, []);
  }

  commitMove(shape, dx, dy) {
    this.commit(this.moveOf(shape, dx, dy));
  }

  // A move as the edit that the server gave for this kind of thing: by a distance, or to a place this far from where
  // the thing stands when the write is sent.
  moveOf(shape, dx, dy) {
    const edit = shape.dataset.moves;
    if (edit.startsWith("move_")) return () => ({ edit, ...keyOf(shape), dx: this.say.typed(dx), dy: this.say.typed(dy) });
    return () => {
      const [x, y, width, height] = JSON.parse((this.things.find(shape.dataset.thing) ?? shape).dataset.box);
      const box = { left: x + dx, right: x + dx + width, bottom: y + dy, top: y + dy + height };
      return { edit, ...keyOf(shape), ...this.placed(box) };
    };
  }

  snapped(at, event) {
    const reach = event.altKey ? 0 : this.reach(event);
    const x = this.snap.nearest("left", at.x, reach) ?? this.snap.nearest("right", at.x, reach);
    const y = this.snap.nearest("bottom", at.y, reach) ?? this.snap.nearest("top", at.y, reach);
    return { x: x ? x.at : this.onTape(at.x), y: y ? y.at : this.onTape(at.y) };
  }

  startDrawing(edit, values, words) {
    this.drawing = { edit, values };
    this.svg.classList.add("drawing-now");
    this.say.words(words);
  }

  stopDrawing() {
    this.drawing = null;
    this.svg.classList.remove("drawing-now");
  }

  placed(box) {
    const { left, right, bottom, top } = box;
    const sides = { x: left, y: bottom, width: right - left, height: top - bottom };
    return Object.fromEntries(Object.entries(sides).map(([name, value]) => [name, this.say.typed(value)]));
  }

  copyOf(gesture) {
    if (!gesture.ghost) {
      gesture.ghost = gesture.shape.cloneNode(false);
      for (const name of ["id", "data-thing"]) gesture.ghost.removeAttribute(name);
      this.show(gesture.ghost);
    }
    return gesture.ghost;
  }

  outlineGhost(gesture, box) {
    if (!gesture.ghost) {
      gesture.ghost = document.createElementNS("http://www.w3.org/2000/svg", "rect");
      this.show(gesture.ghost);
    }
    const { ghost } = gesture;
    ghost.setAttribute("x", box.left);
    ghost.setAttribute("y", this.frame.height - box.top);
    ghost.setAttribute("width", box.right - box.left);
    ghost.setAttribute("height", box.top - box.bottom);
  }

  show(ghost) {
    ghost.setAttribute("class", "ghost-shape");
    this.ghosts.append(ghost);
  }
}

function keyOf(shape) {
  return { [shape.dataset.thing.startsWith("zones") ? "zone" : "opening"]: shape.dataset.mark, shape: "rect" };
}
