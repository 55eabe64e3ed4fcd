// What comes next on a panel without openings: three ways on, gone once there is an opening or somebody has had enough.

const KEY = "castcourse no next";

export function watchNext() {
  const part = document.getElementById("next");
  const isDone = () => document.querySelector(".thing.is-opening") !== null || remembered();
  const refresh = () => (part.hidden = isDone());
  const acts = {
    opening: () => document.querySelector('[data-draw-key="o"]').click(),
    bond: () => openAt("#card .bonds", "summary"),
    advice: () => openAt("#advice-fold", "summary"),
    done: () => remember(),
  };
  part.addEventListener("click", (event) => {
    acts[event.target.closest("[data-next]")?.dataset.next]?.();
    refresh();
  });
  document.addEventListener("editor:settled", refresh);
  refresh();
}

function openAt(fold, head) {
  const found = document.querySelector(fold);
  if (!found) return;
  found.open = true;
  found.querySelector(head).focus();
}

function remembered() {
  try {
    return localStorage.getItem(KEY) !== null;
  } catch {
    return false;
  }
}

function remember() {
  try {
    localStorage.setItem(KEY, "yes");
  } catch {
    // Without storage it comes again with the next page.
  }
}
