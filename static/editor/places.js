// Places that findings and advice point at: pressing one moves the view to the first and rings all until the next press;
// pointer or focus on an advice rings it as long as they stay.

const NS = "http://www.w3.org/2000/svg";
const CLOSE = 120;

export class Places {
  constructor(svg, frame) {
    this.svg = svg;
    this.frame = frame;
    this.pressed = null;
    this.by = "";
    document.addEventListener("click", (event) => {
      const button = event.target.closest("[data-at]");
      if (button) this.press(button);
      const form = document.getElementById("accepted-by");
      if (form) this.by = form.value;
    });
    for (const kind of ["pointerover", "focusin"]) {
      document.addEventListener(kind, (event) => this.follow(event.target.closest("[data-spot]")));
    }
  }

  press(button) {
    const again = button === this.pressed;
    this.release();
    if (again) return;
    this.pressed = button;
    button.setAttribute("aria-pressed", "true");
    const places = numbers(button.dataset.at);
    this.frame.look(places[0], places[1], CLOSE);
    this.ring(...places);
    if (button.dataset.about) this.offer(button);
  }

  release() {
    this.pressed?.setAttribute("aria-pressed", "false");
    this.pressed = null;
    document.getElementById("accepting-now")?.remove();
    this.group.replaceChildren();
  }

  // The form that accepts a finding stands below it while it is pressed.
  offer(button) {
    const form = document.getElementById("accepting").content.firstElementChild.cloneNode(true);
    form.id = "accepting-now";
    form.elements.code.value = button.dataset.code;
    form.elements.about.value = button.dataset.about;
    form.elements.by.value = this.by;
    button.after(form);
  }

  follow(thing) {
    if (thing === this.followed) return;
    this.followed = thing;
    if (thing) this.ring(...numbers(thing.dataset.spot));
    else if (this.pressed) this.ring(...numbers(this.pressed.dataset.at));
    else this.group.replaceChildren();
  }

  // After a swap a button that is gone presses nothing.
  refresh() {
    if (this.pressed && !this.pressed.isConnected) this.release();
    this.followed = null;
  }

  // Two circles a place, as ink alone is lost on dark brick and paper alone on joints.
  ring(...at) {
    const radius = Math.max(5, 18 * this.frame.inchesPerPixel());
    const made = [];
    for (let k = 0; k < at.length; k += 2) {
      for (const name of ["ring-under", "ring-over"]) made.push(circle(at[k], this.frame.height - at[k + 1], radius, name));
    }
    this.group.replaceChildren(...made);
  }

  get group() {
    return this.svg.querySelector("#ring");
  }
}

function numbers(text) {
  return text.split(" ").map(Number);
}

function circle(x, y, radius, name) {
  const made = document.createElementNS(NS, "circle");
  for (const [key, value] of Object.entries({ cx: x, cy: y, r: radius, class: name })) made.setAttribute(key, value);
  return made;
}
