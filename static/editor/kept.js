// What a person has opened or stands on is kept while the server's answer takes the place of what they see.

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
    if (!place.focused || document.activeElement !== document.body) return;
    const same = place.focus && part.querySelector(`#${CSS.escape(place.focus)}`);
    (same && !same.disabled ? same : part).focus({ preventScroll: true });
  }
}

function placeIn(part) {
  const focused = part.contains(document.activeElement);
  const open = [...part.querySelectorAll("details[open][id]")].map((fold) => fold.id);
  return { title: titleOf(part), open, focused, focus: focused ? document.activeElement.id : "" };
}

function titleOf(part) {
  return part.querySelector("h2")?.textContent ?? "";
}

// Whether somebody is at work in a part: stands in a field of it, or has typed or chosen what is not in it yet.
export function isTouched(part) {
  if (!part.contains(document.activeElement)) return false;
  if (document.activeElement.matches("input, select")) return true;
  return [...part.querySelectorAll("input, select")].some((field) =>
    field.matches("select")
      ? [...field.options].some((option) => option.selected !== option.defaultSelected)
      : field.checked !== field.defaultChecked || field.value !== field.defaultValue,
  );
}
