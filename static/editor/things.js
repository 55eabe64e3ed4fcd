// The things of the panel that can be chosen: by pointer, by keyboard, and from the card.

export class Things {
  constructor(editor, svg, live) {
    this.editor = editor;
    this.svg = svg;
    this.live = live;
    this.chosen = null;
    this.others = new Set();
    document.addEventListener("click", (event) => {
      const button = event.target.closest("[data-choose]");
      if (button) this.choose(button.dataset.choose);
    });
  }

  all() {
    return [...this.svg.querySelectorAll("[data-thing]")];
  }

  find(key) {
    return this.all().find((thing) => thing.dataset.thing === key) ?? null;
  }

  get shape() {
    return this.chosen === null ? null : this.find(this.chosen);
  }

  // All that is chosen: the first one, and others chosen to it.
  get keys() {
    return this.chosen === null ? [] : [this.chosen, ...this.others];
  }

  // One thing; more are added, or taken away again, by `add`.
  choose(key) {
    if (key === this.chosen && this.others.size === 0) return;
    this.others.clear();
    this.take(key);
  }

  add(key) {
    if (key === null || this.chosen === null) return this.choose(key);
    if (key !== this.chosen && !this.others.delete(key)) this.others.add(key);
    this.take(this.chosen);
  }

  take(key) {
    document.dispatchEvent(new CustomEvent("things:leaving"));
    this.chosen = key;
    this.mark();
    document.querySelector(".side").scrollTop = 0;
    this.loadCard();
    const shape = this.shape;
    const more = this.others.size ? `${this.keys.length} chosen: ` : "";
    this.live.textContent = shape ? more + this.said(this.find([...this.others].at(-1)) ?? shape) : "Panel chosen";
    document.dispatchEvent(new CustomEvent("things:chosen", { detail: { keys: this.keys } }));
  }

  // `W2, window, 5'-0 1/2" x 5'-10 1/4", 3 of 5`.
  said(shape) {
    const kind = shape.dataset.thing.split("/")[0];
    const alike = this.all().filter((thing) => thing.dataset.thing.split("/")[0] === kind);
    const place = alike.length > 1 ? `, ${alike.indexOf(shape) + 1} of ${alike.length}` : "";
    return `${shape.dataset.name}, ${shape.dataset.words}${place}`;
  }

  step(by) {
    const keys = [null, ...this.all().map((thing) => thing.dataset.thing)];
    const at = keys.indexOf(this.chosen);
    this.choose(keys[(at + by + keys.length) % keys.length]);
  }

  // By key: the next of its kind is chosen as well.
  addNext() {
    const kind = (key) => key.split("/")[0];
    const alike = this.all().map((thing) => thing.dataset.thing).filter((key) => this.chosen && kind(key) === kind(this.chosen));
    const last = this.keys.at(-1);
    const next = [...alike.slice(alike.indexOf(last) + 1), ...alike].find((key) => !this.keys.includes(key));
    if (next) this.add(next);
  }

  // After a swap: a thing that is gone is no longer chosen; what is left gets its mark and handles again.
  refresh() {
    for (const key of this.others) if (this.find(key) === null) this.others.delete(key);
    if (this.chosen !== null && this.find(this.chosen) === null) {
      this.chosen = null;
      this.others.clear();
    }
    this.mark();
  }

  mark() {
    const keys = new Set(this.keys);
    for (const thing of this.all()) thing.classList.toggle("chosen", keys.has(thing.dataset.thing));
    const handles = this.svg.querySelector("#handles");
    const shape = this.shape;
    handles.replaceChildren(...(shape && this.others.size === 0 ? handlesOf(shape, Number(this.svg.dataset.height)) : []));
  }

  get cardAddress() {
    const asked = new URLSearchParams(this.keys.map((key) => ["thing", key]));
    return this.chosen === null ? this.editor.dataset.card : `${this.editor.dataset.card}?${asked}`;
  }

  // One at a time: what is asked for while a card is on its way is asked for once more when that is there.
  loadCard() {
    this.isAsked = true;
    this.loading ??= this.loadCards().finally(() => (this.loading = null));
    return this.loading;
  }

  async loadCards() {
    while (this.isAsked) {
      this.isAsked = false;
      const how = { source: "#card", target: "#card", swap: "innerHTML show:none" };
      await htmx.ajax("GET", this.cardAddress, how).catch(() => {});
    }
  }
}

const SIDES = [
  ["left bottom", 0, 0],
  ["bottom", 0.5, 0],
  ["right bottom", 1, 0],
  ["left", 0, 0.5],
  ["right", 1, 0.5],
  ["left top", 0, 1],
  ["top", 0.5, 1],
  ["right top", 1, 1],
];

// Dots of constant size on the screen: a stroke of no length that does not scale.
function handlesOf(shape, height) {
  const { points, sides, rise, round, box } = shape.dataset;
  if (points) return JSON.parse(points).map(([x, y], index) => dot(x, height - y, { point: index }));
  if (!sides) return [];
  const [x, y, width, tall] = JSON.parse(box);
  const held = round ? SIDES.filter(([names]) => !names.includes(" ")) : SIDES;
  const dots = held.map(([names, across, up]) => dot(x + across * width, height - (y + up * tall), { sides: names }));
  if (rise) dots.push(dot(x, height - (y + tall - Number(rise)), { rise: "yes" }));
  return dots;
}

function dot(x, y, data) {
  const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
  path.setAttribute("d", `M${x} ${y}h.0001`);
  path.setAttribute("class", "handle");
  Object.assign(path.dataset, data);
  return path;
}
