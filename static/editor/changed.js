// The groups of the drawing that an answer changes come in one wrapper and take the place of those of the same id here:
// as swaps of their own they would cost htmx some events each, for every one before them.

export function takeChanged() {
  document.addEventListener("htmx:oobBeforeSwap", (event) => {
    const { target, fragment } = event.detail;
    if (target.id !== "changed") return;
    event.detail.shouldSwap = false;
    for (const group of [...fragment.firstElementChild.children]) document.getElementById(group.id).replaceWith(group);
  });
}
