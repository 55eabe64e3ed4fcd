// The card follows the drawing when the hand rests. Where somebody is at work in it, only the fields that they have not
// touched take the new values: what was typed stays, and nothing that they did not touch is set back.

import { isChanged, isTouched, makeDefault } from "./touched.js";

const REST = 300;

export class CardFollower {
  constructor(svg, editor, things) {
    this.card = document.getElementById("card");
    this.editor = editor;
    this.things = things;
    this.later = 0;
    this.isBehind = false;
    svg.addEventListener("pointerdown", () => clearTimeout(this.later));
    // What was typed while the card was on its way is kept.
    document.addEventListener("htmx:beforeSwap", (event) => {
      if (this.follows && event.detail.target === this.card && isTouched(this.card)) event.detail.shouldSwap = false;
    });
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
    if (isTouched(this.card)) return this.patch();
    this.follows = true;
    await this.things.loadCard();
    this.follows = false;
  }

  async patch() {
    const answer = await fetch(this.things.cardAddress).catch(() => null);
    if (!answer?.ok) return;
    const fresh = document.createElement("template");
    fresh.innerHTML = await answer.text();
    if (fresh.content.querySelector("h2").textContent !== this.card.querySelector("h2").textContent) return;
    for (const field of fresh.content.querySelectorAll("input[type=text][id]")) {
      const here = this.card.querySelector(`#${CSS.escape(field.id)}`);
      if (!here || isChanged(here)) continue;
      here.value = field.defaultValue;
      makeDefault(here);
    }
  }
}
