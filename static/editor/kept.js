// What a person has opened or stands on is kept while the server's answer takes the place of what they see.

import { showEnd } from "./ends.js";

const KEPT = ["card", "advice", "findings", "history"];

export class Kept {
  constructor() {
    this.places = {};
    document.addEventListener("htmx:beforeSwap", () => this.remember());
    document.addEventListener("htmx:oobAfterSwap", (event) => this.restore(event.detail.target?.id));
    document.addEventListener("htmx:afterSwap", (event) => this.restore(event.detail.target?.id));
  }

  remember() {
    for (const id of KEPT) this.places[id] = placeIn(document.getElementById(id));
  }

  restore(id) {
    const place = this.places[id];
    const part = document.getElementById(id);
    if (!place || !part || titleOf(part) !== place.title) return;
    for (const fold of place.open) part.querySelector(`#${CSS.escape(fold)}`)?.setAttribute("open", "");
    for (const [side, value] of place.ends) showAgain(part.querySelector(`#${CSS.escape(side)}`), value);
    if (!place.focused || document.activeElement !== document.body) return;
    const same = place.focus && part.querySelector(`#${CSS.escape(place.focus)}`);
    (same && !same.disabled ? same : part).focus({ preventScroll: true });
    if (same?.type === "text" && place.caret !== null) same.setSelectionRange(place.caret, place.caret);
  }
}

function placeIn(part) {
  const focused = part.contains(document.activeElement);
  const open = [...part.querySelectorAll("details[open][id]")].map((fold) => fold.id);
  const ends = [...part.querySelectorAll("[data-ends]")].map((side) => [side.id, side.value]);
  const { id, selectionEnd } = document.activeElement;
  return { title: titleOf(part), open, ends, focused, focus: focused ? id : "", caret: selectionEnd ?? null };
}

function showAgain(side, value) {
  if (side && [...side.options].some((option) => option.value === value)) {
    side.value = value;
    showEnd(side);
  }
}

function titleOf(part) {
  return part.querySelector("h2")?.textContent ?? "";
}
