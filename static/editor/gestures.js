// What the pointer does to the drawing: chooses at a press, else begins the gesture that what it pressed is for. A gesture
// commits on pointer-up; Escape or a second finger drops it. While it lasts only a dashed ghost moves.
//
// A gesture is `new Kind(tools, event, about)` with `move(at, event)`, `fields()` (the edit as a function, or null) and
// `drop()`. Others follow by `gesture:moved` {fields, clientX, clientY} and `gesture:ended` {committed} on the svg.

import { Draw } from "./gestures/draw.js";
import { Move, moveOf } from "./gestures/move.js";
import { Pan } from "./gestures/pan.js";
import { MovePoint } from "./gestures/point.js";
import { Size } from "./gestures/size.js";
import { Slide } from "./gestures/slide.js";

const MOVED = 4;

export class Gestures {
  constructor(tools) {
    Object.assign(this, tools);
    this.tools = tools;
    this.press = null;
    this.gesture = null;
    this.drawing = null;
    this.pointers = new Map();
    this.svg.addEventListener("pointerdown", (event) => this.down(event));
    this.svg.addEventListener("pointermove", (event) => this.move(event));
    this.svg.addEventListener("pointerup", (event) => this.up(event));
    this.svg.addEventListener("pointercancel", (event) => this.cancel(event));
    this.svg.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
  }

  down(event) {
    if (event.button > 1) return;
    this.pointers.set(event.pointerId, event);
    if (this.pointers.size > 1) return this.drop();
    this.svg.setPointerCapture(event.pointerId);
    this.press = event;
  }

  move(event) {
    this.pointers.set(event.pointerId, event);
    const at = this.frame.face(event);
    if (!this.press || this.pointers.size > 1) return this.say.place(at);
    const moved = Math.hypot(event.clientX - this.press.clientX, event.clientY - this.press.clientY);
    if (moved < MOVED && !this.gesture) return;
    this.gesture ??= this.begun(this.press);
    this.gesture.move(at, event);
    this.tell("gesture:moved", { fields: this.gesture.fields(), clientX: event.clientX, clientY: event.clientY });
  }

  begun(event) {
    const { target } = event;
    if (event.button === 1) return new Pan(this.tools, event);
    if (this.drawing) return new Draw(this.tools, event, this.drawing);
    const handle = target.closest(".handle");
    if (handle) return new (handle.dataset.point ? MovePoint : Size)(this.tools, event, this.things.shape);
    const strip = target.closest(".slider");
    if (strip) return new Slide(this.tools, event, strip);
    const shape = target.closest("[data-thing]");
    if (!shape?.dataset.moves) return new Pan(this.tools, event);
    this.things.choose(shape.dataset.thing);
    return new Move(this.tools, event, shape);
  }

  up(event) {
    this.pointers.delete(event.pointerId);
    const { gesture, press } = this;
    this.gesture = this.press = null;
    if (!press) return;
    if (this.drawing) this.stopDrawing();
    else if (!gesture) this.choose(press);
    if (gesture) this.end(gesture);
  }

  choose({ target, button }) {
    if (button || target.closest(".handle, .slider")) return;
    this.things.choose(target.closest("[data-thing]")?.dataset.thing ?? null);
  }

  end(gesture) {
    const fields = gesture.fields();
    if (fields) this.commit(fields, gesture);
    else gesture.drop();
    this.snap.clear();
    this.tell("gesture:ended", { committed: fields !== null });
  }

  // The ghost stays until the answer stands in the drawing, so that nothing jumps back and forth.
  commit(fields, gesture) {
    this.writes.edit(fields).then(() => gesture?.drop());
  }

  commitMove(shape, dx, dy) {
    this.commit(moveOf(this, shape, dx, dy));
  }

  cancel(event) {
    this.pointers.delete(event.pointerId);
    this.drop();
  }

  drop() {
    const { gesture } = this;
    this.gesture = this.press = null;
    if (!gesture) return;
    gesture.drop();
    this.snap.clear();
    this.tell("gesture:ended", { committed: false });
  }

  wheel(event) {
    event.preventDefault();
    this.frame.zoom(Math.exp(-event.deltaY * 0.0015), event.clientX, event.clientY);
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

  tell(name, detail) {
    this.svg.dispatchEvent(new CustomEvent(name, { detail }));
  }
}
