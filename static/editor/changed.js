// What an answer changes takes the place of what has the same id here. The groups of the drawing come in one wrapper: as
// swaps of their own they would cost htmx some events each, for every one before them. The answer to a write is put in
// here and not by htmx, which would look through all that comes and all that goes; it is to be painted at once.

export function takeChanged(kept) {
  document.addEventListener("htmx:beforeSwap", (event) => {
    const { xhr, requestConfig, target } = event.detail;
    if (requestConfig.verb !== "post" || xhr.status !== 200) return;
    event.detail.shouldSwap = false;
    take(xhr.responseText, target, kept);
  });
  document.addEventListener("htmx:oobBeforeSwap", (event) => {
    const { target, fragment } = event.detail;
    if (target.id !== "changed") return;
    event.detail.shouldSwap = false;
    replaceGroups(fragment.firstElementChild);
  });
}

// As htmx does it: parts with `hx-swap-oob` by their ids, whatever is left into the target.
export function take(text, target, kept) {
  const answer = document.createElement("template");
  answer.innerHTML = text;
  for (const part of [...answer.content.children]) {
    if (!part.matches("template, [hx-swap-oob]")) continue;
    part.remove();
    if (part.matches("template")) replaceGroups(part.content.querySelector("#changed"));
    else replacePart(part, kept);
  }
  target.replaceChildren(answer.content);
  document.getElementById("banner").hidden = true;
}

function replaceGroups(wrapper) {
  for (const group of [...wrapper.children]) document.getElementById(group.id).replaceWith(group);
}

function replacePart(part, kept) {
  const here = document.getElementById(part.id);
  if (part.getAttribute("hx-swap-oob") === "innerHTML") return here.replaceChildren(...part.childNodes);
  part.removeAttribute("hx-swap-oob");
  here.replaceWith(part);
  if (part.hasAttribute("hx-get")) htmx.process(part);
  kept.restore(part.id);
}
