// Moves the view with the pointer.

export class Pan {
  constructor(tools, event) {
    this.frame = tools.frame;
    this.last = event;
  }

  move(_at, event) {
    this.frame.pan(event.clientX - this.last.clientX, event.clientY - this.last.clientY);
    this.last = event;
  }

  fields() {
    return null;
  }

  drop() {}
}
