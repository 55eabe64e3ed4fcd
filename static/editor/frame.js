// Where the drawing is on the screen: face inches to pixels and back, zoom, pan, fit.

export class Frame {
  constructor(svg) {
    this.svg = svg;
    this.height = Number(svg.dataset.height);
    this.home = svg.viewBox.baseVal;
    this.home = { x: this.home.x, y: this.home.y, width: this.home.width, height: this.home.height };
    this.box = { ...this.home };
  }

  // A pointer event's place in the face frame, inches, y up.
  face(event) {
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    return { x: point.x, y: this.height - point.y };
  }

  inchesPerPixel() {
    return 1 / this.svg.getScreenCTM().a;
  }

  show(box) {
    this.box = box;
    this.svg.setAttribute("viewBox", `${box.x} ${box.y} ${box.width} ${box.height}`);
    this.svg.classList.toggle("far", this.inchesPerPixel() > 0.9);
  }

  fit() {
    this.show({ ...this.home });
  }

  // Zoom by `factor` about a client point; the point under the pointer stays where it is.
  zoom(factor, clientX, clientY) {
    const width = this.box.width / factor;
    if (width < 12 || width > this.home.width * 4) return;
    const at = new DOMPoint(clientX, clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    this.show({
      x: at.x - (at.x - this.box.x) / factor,
      y: at.y - (at.y - this.box.y) / factor,
      width,
      height: this.box.height / factor,
    });
  }

  zoomMiddle(factor) {
    const area = this.svg.getBoundingClientRect();
    this.zoom(factor, area.left + area.width / 2, area.top + area.height / 2);
  }

  pan(dx, dy) {
    const scale = this.inchesPerPixel();
    this.show({ ...this.box, x: this.box.x - dx * scale, y: this.box.y - dy * scale });
  }

  // After an edit that changed the panel's size: a new home box from the server.
  resize(height, home) {
    const wasHome = this.box.width === this.home.width && this.box.x === this.home.x && this.box.y === this.home.y;
    this.box.y += height - this.height;
    this.height = height;
    this.home = home;
    this.show(wasHome ? { ...home } : this.box);
  }
}
