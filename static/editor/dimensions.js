// Dimensions of the chosen thing, drawn over it: its width and height, and how far it stands from the panel's left and foot.
// Pressing one, or going to it by key, lets its length be typed; the server sets it to the very length.

const NS = "http://www.w3.org/2000/svg";
const AWAY = 18;
const TEXT = 13;

export class Dimensions {
  constructor(svg, frame, things, writes, say) {
    Object.assign(this, { svg, frame, things, writes, say });
    this.group = document.getElementById("own-dimensions");
    this.box = document.getElementById("dimension");
    this.input = this.box.querySelector("input");
    this.told = this.box.querySelector("small");
    document.addEventListener("things:chosen", () => this.show());
    document.addEventListener("editor:settled", () => this.show());
    document.addEventListener("frame:shown", () => this.show());
    svg.addEventListener("gesture:moved", () => this.group.replaceChildren());
    svg.addEventListener("gesture:ended", () => this.show());
    this.group.addEventListener("click", (event) => this.open(event.target.closest("[data-dimension]")));
    this.group.addEventListener("keydown", (event) => this.key(event));
    this.box.addEventListener("keydown", (event) => event.key === "Escape" && this.leave(event));
    this.box.addEventListener("submit", (event) => this.commit(event));
  }

  show() {
    const { shape } = this.things;
    const known = shape && shape.dataset.box && !shape.matches(".is-line") && this.things.others.size === 0;
    this.group.replaceChildren(...(known ? this.made(shape) : []));
  }

  made(shape) {
    const [x, y, width, height] = JSON.parse(shape.dataset.box);
    const away = AWAY * this.frame.inchesPerPixel();
    const across = { from: [x, y - away], to: [x + width, y - away] };
    const right = x + width + 2.5 * away;
    const up = { from: [right, y], to: [right, y + height] };
    const sizes = [this.one("width", "Width", width, across), this.one("height", "Height", height, up)];
    if (shape.dataset.thing === "outline") return sizes;
    const beside = y + height / 2;
    const over = x + width / 2;
    return [
      ...sizes,
      this.one("left", "From the panel's left", x, { from: [0, beside], to: [x, beside] }),
      this.one("foot", "From the panel's foot", y, { from: [over, 0], to: [over, y - 2 * away] }),
    ];
  }

  // A line with ticks at its ends, and its length beside it as something to press.
  one(name, words, value, { from, to }) {
    const group = made("g", { class: "own-dimension", role: "button", tabindex: "-1", "aria-label": `${words} ${this.say.length(value)}` });
    group.dataset.dimension = name;
    group.dataset.value = value;
    group.dataset.words = words;
    const [ax, ay, bx, by] = [from[0], this.frame.height - from[1], to[0], this.frame.height - to[1]];
    const tick = 5 * this.frame.inchesPerPixel();
    const level = ay === by;
    const ends = [[ax, ay], [bx, by]].map(([x, y]) => (level ? `M${x} ${y - tick}v${2 * tick}` : `M${x - tick} ${y}h${2 * tick}`));
    const [x, y] = this.place(name, [ax, ay], [bx, by]);
    const text = made("text", { x, y, "font-size": TEXT * this.frame.inchesPerPixel() });
    text.textContent = this.say.length(value);
    group.append(made("path", { d: `M${ax} ${ay}L${bx} ${by}${ends.join("")}`, class: "own-line" }), text);
    return group;
  }

  // A length stands in the middle of its line; on a line too short for it, outside the panel, clear of the thing.
  place(name, [ax, ay], [bx, by]) {
    const pixel = this.frame.inchesPerPixel();
    const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
    if (name === "left" && bx - ax < 60 * pixel) return [Math.min(ax, bx) - 36 * pixel, y];
    if (name === "foot" && ay - by < 30 * pixel) return [x, Math.max(ay, by) + TEXT * pixel];
    return [x, y];
  }

  focus() {
    const first = this.group.querySelector("[data-dimension]");
    if (first) first.focus();
    else this.say.words("Choose an opening, a zone or the outline with the arrow keys first");
  }

  key(event) {
    const all = [...this.group.querySelectorAll("[data-dimension]")];
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (by) all[(all.indexOf(event.target) + by + all.length) % all.length].focus();
    else if (event.key === "Enter" || event.key === " ") this.open(event.target);
    else if (event.key === "Escape") this.svg.focus({ preventScroll: true });
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  open(group) {
    if (!group) return;
    this.asked = { thing: this.things.chosen, dimension: group.dataset.dimension };
    this.box.querySelector(".words").textContent = group.dataset.words;
    this.input.value = this.say.typed(Number(group.dataset.value));
    this.told.textContent = "";
    this.box.hidden = false;
    const area = this.svg.parentElement.getBoundingClientRect();
    const at = group.querySelector("text").getBoundingClientRect();
    this.box.style.left = `${Math.max(0, Math.min(at.left - area.left, area.width - this.box.offsetWidth))}px`;
    this.box.style.top = `${Math.max(0, Math.min(at.top - area.top, area.height - this.box.offsetHeight))}px`;
    this.input.focus({ preventScroll: true });
    this.input.select();
  }

  leave(event) {
    event.stopPropagation();
    this.close();
  }

  close() {
    this.box.hidden = true;
    this.svg.focus({ preventScroll: true });
  }

  // What is refused stays as it was typed, with the reason beside it.
  async commit(event) {
    event.preventDefault();
    event.stopPropagation();
    const asked = { edit: "set_dimension", ...this.asked, length: this.input.value };
    const before = document.getElementById("revision").dataset.revision;
    await this.writes.edit(() => asked);
    const why = document.querySelector("#notice li")?.textContent;
    if (why && document.getElementById("revision").dataset.revision === before) this.told.textContent = why;
    else this.close();
  }
}

function made(name, attributes) {
  const element = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
}
