// Advice is worked out while its fold is open, once the hand rests; never with an edit itself.

const REST = 400;

export class Advising {
  constructor(editor, svg) {
    this.address = editor.dataset.advice;
    this.list = document.getElementById("advice");
    this.fold = document.getElementById("advice-fold");
    this.later = 0;
    this.fold.addEventListener("toggle", () => this.fold.open && this.load());
    svg.addEventListener("pointerdown", () => clearTimeout(this.later));
    svg.addEventListener("pointerup", () => this.isStale && this.soon());
    this.list.addEventListener("submit", (event) => this.hold(event), true);
  }

  // What is shown was worked out for the panel as it was: it is not applied to another.
  refresh() {
    this.stale = true;
    this.list.setAttribute("aria-busy", "true");
    if (this.fold.open) this.soon();
  }

  get isStale() {
    return this.stale && this.fold.open;
  }

  hold(event) {
    if (!this.stale) return;
    event.preventDefault();
    event.stopPropagation();
  }

  soon() {
    clearTimeout(this.later);
    this.later = setTimeout(() => this.load(), REST);
  }

  async load() {
    this.stale = false;
    const look = htmx.ajax("GET", this.address, { source: "#advice", target: "#advice", swap: "innerHTML show:none" });
    await look.catch(() => (this.stale = true));
    if (!this.stale) this.list.setAttribute("aria-busy", "false");
  }
}
