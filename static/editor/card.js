// The card follows the drawing when the hand rests. Where somebody is at work in it, only the fields that they have not
// touched take the new values: what was typed stays, and nothing that they did not touch is set back. What was typed and
// not set when another thing is chosen is there again when its card comes back.

import { changedIn, isChanged, isTouched, makeDefault } from "./touched.js";

const REST = 300;

export class CardFollower {
  constructor(svg, things) {
    this.card = document.getElementById("card");
    this.things = things;
    this.later = 0;
    this.isBehind = false;
    this.drafts = new Map();
    this.key = this.keyNow;
    svg.addEventListener("pointerdown", () => clearTimeout(this.later));
    document.addEventListener("things:leaving", () => this.putAside());
    // What was typed while the card was on its way is kept.
    document.addEventListener("htmx:beforeSwap", (event) => {
      if (this.follows && event.detail.target === this.card && isTouched(this.card)) event.detail.shouldSwap = false;
    });
    document.addEventListener("htmx:afterSwap", (event) => event.detail.target === this.card && this.takeBack());
    addEventListener("beforeunload", (event) => (changedIn(this.card).length || this.drafts.size) && event.preventDefault());
  }

  // After a change; one that came from the card itself left nothing in it that is not known.
  soon(isFromCard) {
    this.isBehind ||= !isFromCard;
    clearTimeout(this.later);
    this.later = setTimeout(() => (this.following = this.follow()), REST);
  }

  // Resolves when the card has followed what was done elsewhere: for somebody who goes to it by key, or sends a form of it.
  now() {
    if (!this.isBehind) return this.following;
    clearTimeout(this.later);
    this.following = this.follow();
    return this.following;
  }

  async follow() {
    this.isBehind = false;
    if (this.key === this.keyNow && isTouched(this.card)) return this.patch();
    this.putAside();
    this.follows = true;
    await this.things.loadCard();
    this.follows = false;
  }

  get keyNow() {
    return this.things.keys.join(" ");
  }

  putAside() {
    const typed = changedIn(this.card).filter((field) => field.id);
    if (typed.length) this.drafts.set(this.key, typed.map(({ id, value, checked }) => ({ id, value, checked })));
  }

  takeBack() {
    this.key = this.keyNow;
    for (const { id, value, checked } of this.drafts.get(this.key) ?? []) {
      const field = this.card.querySelector(`#${CSS.escape(id)}`);
      if (field?.matches("[type=checkbox], [type=radio]")) field.checked = checked;
      else if (field) field.value = value;
    }
    this.drafts.delete(this.key);
  }

  async patch() {
    const answer = await fetch(this.things.cardAddress).catch(() => null);
    if (!answer?.ok) return;
    const fresh = document.createElement("template");
    fresh.innerHTML = await answer.text();
    for (const field of fresh.content.querySelectorAll("input[type=text][id], select[id]")) {
      const here = this.card.querySelector(`#${CSS.escape(field.id)}`);
      if (!here || isChanged(here)) continue;
      here.value = field.value;
      makeDefault(here);
    }
  }
}
