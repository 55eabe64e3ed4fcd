// Choosing a side of an opening, or an edge of the outline, shows how the brick ends there now.

import { makeDefault } from "./touched.js";

export function watchEnds() {
  document.addEventListener("change", (event) => event.target.matches("[data-ends]") && showEnd(event.target));
}

export function showEnd(side) {
  makeDefault(side);
  for (const [name, value] of Object.entries(JSON.parse(side.dataset.ends)[side.value])) {
    const field = side.form.elements[name];
    field.value = value;
    makeDefault(field);
  }
}
