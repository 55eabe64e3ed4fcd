// While the hand rests within a gesture the server lays the panel out as it would be: its brick takes the place of what is
// there, and what it costs stands beside the pointer. One question at a time; an answer to another place than the hand is at
// by then is dropped. The drawing is put back when the gesture ends, or just before the answer of its edit is put in.

import { formHeaders } from "../form_token.js";

const REST = 60;
const BESIDE = 16;
const OVER_FINGER = 72;

export class Live {
  constructor(editor, svg, writes) {
    this.address = `${editor.dataset.edits.replace(/edits$/, "preview")}`;
    this.svg = svg;
    this.writes = writes;
    this.label = document.getElementById("cost");
    this.kept = new Map();
    this.place = 0;
    this.later = 0;
    this.busy = false;
    svg.addEventListener("pointermove", (event) => (this.isTouch = event.pointerType === "touch"));
    svg.addEventListener("gesture:moved", (event) => this.moved(event.detail));
    svg.addEventListener("gesture:ended", (event) => this.ended(event.detail));
    for (const moment of ["htmx:beforeSwap", "htmx:afterRequest"]) {
      document.addEventListener(moment, (event) => event.detail.requestConfig.verb === "post" && this.restore());
    }
  }

  moved({ fields, clientX, clientY }) {
    this.place += 1;
    this.fields = fields;
    clearTimeout(this.later);
    this.beside(clientX, clientY);
    if (fields) this.later = setTimeout(() => this.ask(), REST);
  }

  ended({ committed }) {
    this.place += 1;
    this.fields = null;
    clearTimeout(this.later);
    this.label.hidden = true;
    if (!committed) this.restore();
  }

  async ask() {
    if (this.busy || !this.fields) return;
    this.busy = true;
    const { place } = this;
    const answer = await this.answer(this.fields());
    this.busy = false;
    if (place === this.place && answer !== null) this.show(answer);
    else if (this.fields && place !== this.place) this.later = setTimeout(() => this.ask(), REST);
  }

  // No answer is no preview; the edit itself will say what is wrong.
  async answer(values) {
    try {
      const answered = await fetch(this.address, { method: "POST", headers: formHeaders, body: new URLSearchParams(this.writes.dressed(values)) });
      return answered.ok ? await answered.text() : null;
    } catch {
      return null;
    }
  }

  show(text) {
    const answer = document.createElement("template");
    answer.innerHTML = text;
    const groups = [...answer.content.querySelector("template").content.querySelector("g").children];
    const now = new Set(groups.map((group) => group.id));
    for (const id of [...this.kept.keys()]) if (!now.has(id)) this.putBack(id);
    for (const group of groups) this.put(group);
    this.label.replaceChildren(...answer.content.querySelector("div").children);
    this.label.hidden = this.label.childElementCount === 0;
    this.beside(...this.at);
  }

  put(group) {
    const here = document.getElementById(group.id);
    if (!this.kept.has(group.id)) this.kept.set(group.id, here);
    here.replaceWith(group);
  }

  putBack(id) {
    document.getElementById(id).replaceWith(this.kept.get(id));
    this.kept.delete(id);
  }

  restore() {
    for (const id of [...this.kept.keys()]) this.putBack(id);
  }

  // Over the hand and to its right where there is room; the box for typing stands below it.
  beside(clientX, clientY) {
    this.at = [clientX, clientY];
    if (this.label.hidden) return;
    const area = this.svg.parentElement.getBoundingClientRect();
    const { offsetWidth, offsetHeight } = this.label;
    const [x, y] = [clientX - area.left, clientY - area.top];
    const left = x + BESIDE + offsetWidth < area.width ? x + BESIDE : Math.max(0, x - BESIDE - offsetWidth);
    const up = this.isTouch ? OVER_FINGER : BESIDE;
    this.label.style.left = `${left}px`;
    this.label.style.top = `${Math.max(0, y - up - offsetHeight)}px`;
  }
}
