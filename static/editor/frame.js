// Where the drawing is on the screen: face inches to pixels and back, zoom, pan, fit.

import { Distance } from "./distance.js";

export class Frame {
  constructor(svg) {
    this.svg = svg;
    this.over = document.getElementById("over");
    this.distance = new Distance(svg);
    this.height = Number(svg.dataset.height);
    const { x, y, width, height } = svg.viewBox.baseVal;
    this.home = { x, y, width, height };
    this.box = { ...this.home };
    this.area = svg.getBoundingClientRect();
    new ResizeObserver(() => this.measure()).observe(svg);
    svg.addEventListener("pointerenter", () => (this.area = svg.getBoundingClientRect()));
  }

  measure() {
    this.area = this.svg.getBoundingClientRect();
    this.distance.show(this.inchesPerPixel(), this.home);
    document.dispatchEvent(new Event("frame:shown"));
  }

  // A client point in the svg's own inches, y down; the view box is centred in the area.
  at(clientX, clientY) {
    const scale = this.inchesPerPixel();
    return {
      x: this.box.x + this.box.width / 2 + (clientX - this.area.left - this.area.width / 2) * scale,
      y: this.box.y + this.box.height / 2 + (clientY - this.area.top - this.area.height / 2) * scale,
    };
  }

  // A pointer event's place in the face frame, inches, y up.
  face(event) {
    const { x, y } = this.at(event.clientX, event.clientY);
    return { x, y: this.height - y };
  }

  // From numbers kept, as asking the browser would make it lay out a drawing that was just swapped.
  inchesPerPixel() {
    return Math.max(this.box.width / this.area.width, this.box.height / this.area.height);
  }

  show(box) {
    this.box = box;
    const view = `${box.x} ${box.y} ${box.width} ${box.height}`;
    this.svg.setAttribute("viewBox", view);
    this.over.setAttribute("viewBox", view);
    this.distance.show(this.inchesPerPixel(), this.home);
  }

  fit() {
    this.show({ ...this.home });
  }

  // Zoom by `factor` about a client point; the point under the pointer stays where it is.
  zoom(factor, clientX, clientY) {
    const width = this.box.width / factor;
    if (width < 12 || width > this.home.width * 4) return;
    const at = this.at(clientX, clientY);
    this.show({
      x: at.x - (at.x - this.box.x) / factor,
      y: at.y - (at.y - this.box.y) / factor,
      width,
      height: this.box.height / factor,
    });
  }

  zoomMiddle(factor) {
    const { clientX, clientY } = this.middle();
    this.zoom(factor, clientX, clientY);
  }

  middle() {
    return { clientX: this.area.left + this.area.width / 2, clientY: this.area.top + this.area.height / 2 };
  }

  pan(dx, dy) {
    const scale = this.inchesPerPixel();
    this.show({ ...this.box, x: this.box.x - dx * scale, y: this.box.y - dy * scale });
  }

  // Two fingers from where they were to where they are: about their middle, and along with it.
  pinch(before, now) {
    const [was, is] = [middle(before), middle(now)];
    this.pan(is.clientX - was.clientX, is.clientY - was.clientY);
    this.zoom(apart(now) / Math.max(1, apart(before)), is.clientX, is.clientY);
  }

  // The view over a place of the face, at most `widest` inches wide.
  look(x, y, widest) {
    const factor = Math.max(1, this.box.width / widest);
    const [width, height] = [this.box.width / factor, this.box.height / factor];
    this.show({ x: x - width / 2, y: this.height - y - height / 2, width, height });
  }

  // After an edit: a panel of another size gets another home box; the same place stays in view.
  resize(height, home) {
    const same = ["x", "y", "width", "height"].every((side) => home[side] === this.home[side]);
    if (same && height === this.height) return;
    const wasHome = this.box.width === this.home.width && this.box.x === this.home.x && this.box.y === this.home.y;
    this.box.y += height - this.height;
    this.height = height;
    this.home = home;
    this.show(wasHome ? { ...home } : this.box);
  }
}

function middle([a, b]) {
  return { clientX: (a.clientX + b.clientX) / 2, clientY: (a.clientY + b.clientY) / 2 };
}

function apart([a, b]) {
  return Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
}
