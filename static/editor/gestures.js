// What the pointer does to the drawing: chooses at a press, else begins the gesture that what it pressed is for. A gesture
// commits on pointer-up; Escape or a second finger drops it. While it lasts only a dashed ghost moves.
//
// Others follow by `gesture:moved` {fields, clientX, clientY} and `gesture:ended` {committed} on the svg.

import { drawingOf } from "./drawings.js";
import { MoveEdge, nearestEdge } from "./gestures/edge.js";
import { Move, moveOf } from "./gestures/move.js";
import { Pan } from "./gestures/pan.js";
import { MovePoint } from "./gestures/point.js";
import { Rise } from "./gestures/rise.js";
import { Size } from "./gestures/size.js";
import { Slide } from "./gestures/slide.js";

const MOVED = 4;
const EDGE = 7;

export class Gestures {
  constructor(tools) {
    Object.assign(this, tools);
    this.tools = tools;
    this.press = null;
    this.gesture = null;
    this.drawing = null;
    this.isPanning = false;
    this.pointers = new Map();
    // A drag over lettering is no drag of the browser's own.
    for (const kind of ["dragstart", "selectstart"]) this.svg.addEventListener(kind, (event) => event.preventDefault());
    for (const kind of ["down", "move", "up", "cancel"]) {
      this.svg.addEventListener(`pointer${kind}`, (event) => this[kind](event));
    }
  }

  // What is under way and could be typed to: a drawing, or a gesture of the hand.
  get current() {
    return this.drawing ?? this.gesture;
  }

  down(event) {
    if (event.button > 1) return;
    this.pointers.set(event.pointerId, event);
    this.svg.setPointerCapture(event.pointerId);
    if (this.pointers.size > 1) return this.revert();
    this.press = event;
    if (!this.drawing || this.pans(event)) return;
    this.drawing.press(this.frame.face(event), event);
    this.follow(event);
    if (this.drawing.isDone) this.endDrawing();
  }

  move(event) {
    if (this.pointers.size > 1) return this.pinch(event);
    if (this.pointers.has(event.pointerId)) this.pointers.set(event.pointerId, event);
    const at = this.frame.face(event);
    if (this.drawing && !this.gesture && !(this.press && this.pans(this.press))) {
      this.drawing.move(at, event);
      return this.follow(event);
    }
    if (!this.press) return this.say.place(at);
    const moved = Math.hypot(event.clientX - this.press.clientX, event.clientY - this.press.clientY);
    if (moved < MOVED && !this.gesture) return;
    if (!this.gesture) this.begin();
    this.gesture.move(at, event);
    this.follow(event);
  }

  begin() {
    this.gesture = this.begun(this.press);
    this.svg.classList.add("at-work");
  }

  pans(event) {
    return event.button === 1 || this.isPanning;
  }

  follow({ clientX, clientY }) {
    if (this.current) this.tell("gesture:moved", { fields: this.current.fields(), clientX, clientY });
  }

  begun(event) {
    const { target } = event;
    if (this.pans(event)) return new Pan(this.tools, event);
    const handle = target.closest(".handle");
    if (handle) return new (kindOf(handle))(this.tools, event, this.things.shape);
    const strip = target.closest(".slider");
    if (strip) return new Slide(this.tools, event, strip);
    const shape = target.closest("[data-thing]");
    if (shape && this.isAtEdge(shape, event)) return new MoveEdge(this.tools, event, shape);
    if (!shape?.dataset.moves) return new Pan(this.tools, event);
    if (!this.things.keys.includes(shape.dataset.thing)) this.things.choose(shape.dataset.thing);
    return new Move(this.tools, event, shape);
  }

  isAtEdge(shape, event) {
    if (shape.dataset.thing !== this.things.chosen || !shape.dataset.points || shape.matches(".is-line")) return false;
    const { off } = nearestEdge(JSON.parse(shape.dataset.points), this.frame.face(event));
    return off <= EDGE * this.frame.inchesPerPixel();
  }

  up(event) {
    this.pointers.delete(event.pointerId);
    const { gesture, press } = this;
    this.gesture = this.press = null;
    if (!press) return;
    if (gesture) return this.end(gesture);
    if (!this.drawing) return this.choose(press);
    this.drawing.release(this.frame.face(event), event);
    if (this.drawing.isDone) this.endDrawing();
  }

  choose({ target, button, shiftKey }) {
    if (button || this.isPanning || target.closest(".handle, .slider")) return;
    const key = target.closest("[data-thing]")?.dataset.thing ?? null;
    if (shiftKey) this.things.add(key);
    else this.things.choose(key);
  }

  end(gesture) {
    const fields = gesture.fields();
    if (fields) this.commit(fields, gesture);
    else gesture.drop();
    this.snap.clear();
    this.tell("gesture:ended", { committed: fields !== null });
  }

  // The ghost stays until the answer stands in the drawing, so that nothing jumps back and forth.
  async commit(fields, gesture) {
    const status = await this.writes.edit(fields);
    gesture?.drop();
    return status;
  }

  commitMove(shape, dx, dy) {
    this.commit(moveOf(this.things, shape, this.say.typed(dx), this.say.typed(dy)));
  }

  cancel(event) {
    this.pointers.delete(event.pointerId);
    this.revert();
  }

  // A second finger or a lost pointer: what the hand was about is not done.
  revert() {
    this.drawing?.unpress();
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

  pinch(now) {
    const before = this.pointers.get(now.pointerId);
    const other = [...this.pointers.values()].find((pointer) => pointer.pointerId !== now.pointerId);
    if (!before) return;
    this.pointers.set(now.pointerId, now);
    this.frame.pinch([before, other], [now, other]);
  }

  startDrawing(asked) {
    this.stopDrawing();
    this.drawing = drawingOf(this.tools, asked);
    this.svg.classList.add("drawing-now");
    this.svg.focus({ preventScroll: true });
    const middle = this.frame.middle();
    this.drawing.move(this.frame.face(middle), { ...middle, altKey: true, isTyped: true });
    this.say.words(asked.words);
    this.tell("drawing:changed", { kind: asked.kind, edit: asked.edit });
  }

  // Enter takes the place that is shown as the next point, or closes what is drawn.
  enter() {
    if (this.drawing?.enter()) this.endDrawing();
    else if (this.gesture) this.enterGesture();
    return this.current !== null;
  }

  enterGesture() {
    const { gesture } = this;
    this.gesture = this.press = null;
    this.end(gesture);
  }

  async endDrawing() {
    const { drawing } = this;
    const fields = drawing.fields();
    const known = new Set(this.things.all().map((thing) => thing.dataset.thing));
    this.drawing = null;
    this.stopDrawing();
    if (!fields) return drawing.drop();
    this.tell("gesture:ended", { committed: true });
    const status = await this.commit(fields, drawing);
    if (status === 422 && !this.current) this.resume(drawing);
    else this.chooseNew(known);
  }

  // What was refused is drawn on from where it was, its last point open.
  resume(drawing) {
    this.drawing = drawing;
    this.svg.classList.add("drawing-now");
    drawing.reopen();
    this.tell("drawing:changed", { kind: drawing.asked.kind, edit: drawing.asked.edit });
  }

  chooseNew(known) {
    const made = this.things.all().find((thing) => !known.has(thing.dataset.thing));
    if (made) this.things.choose(made.dataset.thing);
  }

  // One step back: false where nothing is under way.
  back() {
    if (this.gesture) this.drop();
    else if (!this.drawing) return false;
    else if (!this.drawing.back()) this.stopDrawing();
    return true;
  }

  stopDrawing() {
    if (this.drawing) this.tell("gesture:ended", { committed: false });
    this.drawing?.drop();
    this.drawing = null;
    this.snap.clear();
    this.svg.classList.remove("drawing-now");
    this.tell("drawing:changed", { kind: null });
  }

  tell(name, detail) {
    if (name === "gesture:ended") this.svg.classList.remove("at-work");
    this.svg.dispatchEvent(new CustomEvent(name, { detail }));
  }
}

function kindOf(handle) {
  if (handle.dataset.point) return MovePoint;
  return handle.dataset.rise ? Rise : Size;
}
