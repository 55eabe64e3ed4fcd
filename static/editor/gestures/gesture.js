// What every gesture is: it follows the hand, may be held to sizes that were typed, and says the edit it stands for.
//
// `sizes()` are the lengths that can be typed, `fields()` the edit as a function (null: nothing to do), `back()` takes one
// step back (false: there is none), `drop()` takes the ghost away.

export class Gesture {
  constructor(tools) {
    Object.assign(this, tools);
    this.locks = {};
    this.last = null;
  }

  move(at, event) {
    this.last = [at, event];
    this.follow(at, event);
  }

  // Holds a size to what was typed, {text, inches}, or lets it go again with null.
  lock(name, typed) {
    if (typed) this.locks[name] = typed;
    else delete this.locks[name];
    if (this.last) this.follow(...this.last);
  }

  // The size as typed, on the side to which the hand points.
  held(name, value) {
    const lock = this.locks[name];
    return lock ? (value < 0 ? -1 : 1) * lock.inches : value;
  }

  // As it goes to the server: the very words where they were typed.
  text(name, value) {
    const lock = this.locks[name];
    if (!lock) return this.say.typed(value);
    const isTurned = value < 0 !== lock.inches < 0;
    return isTurned ? this.say.typed(value) : lock.text;
  }

  sizes() {
    return [];
  }

  fields() {
    return null;
  }

  back() {
    return false;
  }

  drop() {
    this.ghost?.remove();
    this.ghost = null;
  }
}
