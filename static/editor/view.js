// Zoom and pan by the wheel, and by a held space bar.

export class View {
  constructor(svg, frame, gestures) {
    Object.assign(this, { svg, frame, gestures });
    svg.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
    svg.addEventListener("keydown", (event) => event.key === " " && this.hold(event, true));
    svg.addEventListener("keyup", (event) => event.key === " " && this.hold(event, false));
    svg.addEventListener("blur", () => this.pan(false));
  }

  // A pinch on a track pad comes as a wheel with Ctrl; Shift turns the wheel sideways.
  wheel(event) {
    event.preventDefault();
    if (event.shiftKey) this.frame.pan(-(event.deltaX || event.deltaY), 0);
    else this.frame.zoom(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015)), event.clientX, event.clientY);
  }

  hold(event, isHeld) {
    event.preventDefault();
    this.pan(isHeld);
  }

  pan(isHeld) {
    this.gestures.isPanning = isHeld;
    this.svg.classList.toggle("panning", isHeld);
  }
}
