// The pole of a wall's drawing: dragging it moves the datum, and so the courses of every panel that follows the wall.

import { Say } from "../editor/say.js";

const REACH = 6; // pixels from which a head or a sill draws the courses to itself
const STILL = 3; // pixels that are no drag yet

function listen(handle) {
  const section = handle.closest("section");
  const drag = new DatumDrag(handle, section.querySelector(".pole-words"), section.querySelector(".wall-settings"));
  handle.closest("svg").classList.add("can-slide");
  handle.addEventListener("pointerdown", (event) => event.button === 0 && drag.start(event));
  handle.addEventListener("pointermove", (event) => drag.move(event));
  handle.addEventListener("pointerup", () => drag.commit());
  handle.addEventListener("pointercancel", () => drag.revert());
  document.addEventListener("keydown", (event) => event.key === "Escape" && drag.revert());
}

class DatumDrag {
  constructor(handle, line, form) {
    Object.assign(this, { handle, line, form, from: null });
    this.svg = handle.closest("svg");
    this.moved = this.svg.querySelector(".moved");
    this.pole = JSON.parse(handle.dataset.pole);
    this.say = new Say(this.svg, line);
    this.rest = line.textContent;
  }

  start(event) {
    this.inches = 1 / this.handle.getScreenCTM().d;
    this.from = event.clientY;
    this.to = null;
    this.handle.setPointerCapture(event.pointerId);
    event.preventDefault();
  }

  move(event) {
    if (this.from === null) return;
    const pixels = this.from - event.clientY;
    if (this.to === null && Math.abs(pixels) < STILL) return;
    this.to = this.snapped(pixels * this.inches, event.altKey ? 0 : REACH * this.inches);
    this.show();
  }

  // How far the datum goes: to where a course meets a head or a sill if that is near, else to a mark of the tape.
  snapped(by, reach) {
    let best = null;
    for (const [way, gauge, words] of this.pole.ways) {
      const near = way + Math.round((by - way) / gauge) * gauge;
      if (Math.abs(near - by) <= (best ? Math.abs(best.by - by) : reach)) best = { by: near, words };
    }
    return best ?? { by: this.onTape(this.pole.datum + by) - this.pole.datum, words: "" };
  }

  onTape(at) {
    return this.say.unit === "mm" ? Math.round(at * 25.4) / 25.4 : Math.round(at * 16) / 16;
  }

  show() {
    const { by, words } = this.to;
    const datum = `Datum ${this.say.length(this.pole.datum + by)}`;
    const way = by < 0 ? "down" : "up";
    this.svg.classList.add("sliding");
    this.moved.setAttribute("transform", `translate(0 ${-by})`);
    this.moved.querySelector("text").textContent = datum;
    const courses = `courses ${this.say.length(Math.abs(by))} ${way}`;
    this.say.words([datum, courses, words && `a course meets ${words}`].filter(Boolean).join("; "));
  }

  revert() {
    if (this.from === null) return;
    this.from = null;
    this.svg.classList.remove("sliding");
    this.say.words(this.rest);
  }

  commit() {
    if (this.from === null) return;
    const to = this.to;
    if (to === null || Math.abs(to.by) < 1e-6) return this.revert();
    this.from = null;
    this.form.elements.datum.value = this.say.typed(this.pole.datum + to.by);
    this.form.requestSubmit();
  }
}

function listenIn(part) {
  for (const handle of part.querySelectorAll(".pole-handle")) listen(handle);
}

listenIn(document);

// In a large project a wall's drawing follows once it comes into view, and its counts after the drawing.
document.addEventListener("htmx:afterSettle", (event) => {
  if (!event.target.matches("figure.wall")) return;
  event.target.removeAttribute("aria-busy");
  listenIn(event.target);
  htmx.trigger(event.target.closest("section").querySelector("[hx-trigger^=laid]"), "laid");
});
