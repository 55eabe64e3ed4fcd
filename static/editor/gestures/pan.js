// Moves the view with the pointer.

import { Gesture } from "./gesture.js";

export class Pan extends Gesture {
  constructor(tools, event) {
    super(tools);
    this.before = event;
  }

  follow(_at, event) {
    this.frame.pan(event.clientX - this.before.clientX, event.clientY - this.before.clientY);
    this.before = event;
  }
}
