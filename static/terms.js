// Help on a term: a sentence and a small drawing, while the pointer rests on its label, after a long press, or by F1 in its
// field. Escape takes it away; it stays while the pointer is on it.

const REST = 350;
const LONG = 500;

const help = document.getElementById("term-help");
let known = null;
let later = 0;
let wasLong = false;
let shown = null;

async function sentences() {
  known ??= fetch(`${help.dataset.terms}/sentences.json`).then((answer) => answer.json());
  return known;
}

async function show(label) {
  const { term } = label.dataset;
  const all = await sentences().catch(() => null);
  if (!all || !label.isConnected) return;
  const palette = getComputedStyle(document.documentElement).colorScheme.includes("dark") ? "night" : "paper";
  help.querySelector("strong").textContent = all[term].name;
  help.querySelector("p").textContent = all[term].sentence;
  help.querySelector("img").src = `${help.dataset.terms}/${palette}/${term}.svg`;
  help.showPopover();
  label.setAttribute("aria-describedby", "term-help");
  shown = label;
  place(label);
}

// Under the label, or over it where there is no room.
function place(label) {
  const at = label.getBoundingClientRect();
  const { offsetWidth, offsetHeight } = help;
  const under = at.bottom + 6 + offsetHeight < innerHeight;
  help.style.left = `${Math.max(8, Math.min(at.left, innerWidth - offsetWidth - 8))}px`;
  help.style.top = `${Math.max(8, under ? at.bottom + 6 : at.top - 6 - offsetHeight)}px`;
}

function hide() {
  clearTimeout(later);
  shown?.removeAttribute("aria-describedby");
  shown = null;
  if (help.matches(":popover-open")) help.hidePopover();
}

function soon(label, wait) {
  clearTimeout(later);
  later = setTimeout(() => show(label), wait);
}

// A pointer that lies still while something appears or goes under it asks for nothing and takes nothing away.
let rested = null;
const where = ({ screenX, screenY }) => `${screenX} ${screenY}`;
document.addEventListener("pointermove", (event) => (rested = where(event)));

document.addEventListener("pointerover", (event) => {
  if (event.pointerType === "touch" || where(event) === rested) return;
  const label = event.target.closest?.(".term");
  if (label) soon(label, REST);
  else if (!event.target.closest?.("#term-help")) hide();
});

document.addEventListener("pointerdown", (event) => {
  wasLong = false;
  const label = event.target.closest?.(".term");
  if (event.pointerType !== "touch") return;
  if (!label) return hide();
  clearTimeout(later);
  later = setTimeout(() => ((wasLong = true), show(label)), LONG);
});

for (const kind of ["pointerup", "pointercancel"]) {
  document.addEventListener(kind, (event) => event.pointerType === "touch" && !wasLong && clearTimeout(later));
}

// A long press is a question, not a press.
document.addEventListener(
  "click",
  (event) => {
    if (!wasLong || !event.target.closest?.("label, summary, .term")) return;
    event.preventDefault();
    event.stopPropagation();
    wasLong = false;
  },
  true,
);

document.addEventListener("contextmenu", (event) => wasLong && event.preventDefault());

document.addEventListener(
  "keydown",
  (event) => {
    if (event.key === "Escape" && help.matches(":popover-open")) {
      event.stopPropagation();
      return hide();
    }
    if (event.key !== "F1") return;
    const label = termAt(document.activeElement);
    if (!label) return;
    event.preventDefault();
    show(label);
  },
  true,
);

// The term of the field, of the fold's head, or of the box that has the focus.
function termAt(element) {
  if (element.matches(".term")) return element;
  const own = element.labels?.[0]?.querySelector(".term") ?? element.querySelector?.(".term");
  return own ?? element.closest("details")?.querySelector("summary .term") ?? null;
}
