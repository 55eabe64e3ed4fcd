// A folded list of bonds: it opens at the one that is chosen, and its head shows it.

export function watchBonds() {
  document.addEventListener("change", (event) => showChosen(event.target));
  document.addEventListener("toggle", (event) => openAtChosen(event.target), true);
}

function showChosen(radio) {
  const fold = radio.closest(".bonds");
  if (!fold) return;
  const chosen = radio.closest("label").querySelector(".bond").cloneNode(true);
  fold.querySelector("summary .bond").replaceWith(chosen);
}

function openAtChosen(fold) {
  if (!fold.open || !fold.matches(".bonds")) return;
  const list = fold.querySelector("fieldset");
  const chosen = list.querySelector("label:has(:checked)");
  if (chosen) list.scrollTop = chosen.offsetTop - (list.clientHeight - chosen.offsetHeight) / 2;
}
