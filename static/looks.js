// How this browser shows drawings and pages, kept from visit to visit: brick or line drawing, day or night. It runs
// before anything is painted, so that no page turns from one to the other before the eyes.

const root = document.documentElement;
const machine = matchMedia("(prefers-color-scheme: dark)");

function kept(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

// Where the browser keeps nothing, the choice lasts as long as the page.
function keep(name, value) {
  try {
    if (value) localStorage.setItem(name, value);
    else localStorage.removeItem(name);
  } catch {
    return;
  }
}

function put(name, value) {
  if (value) root.dataset[name] = value;
  else delete root.dataset[name];
}

function isNight() {
  return root.dataset.theme ? root.dataset.theme === "night" : machine.matches;
}

const WAYS = {
  lines: {
    key: "l",
    is: () => root.dataset.drawn === "lines",
    turn: (on) => set("drawn", on ? "lines" : ""),
  },
  night: {
    key: "n",
    is: isNight,
    turn: (on) => set("theme", on === machine.matches ? "" : on ? "night" : "paper"),
  },
};

function set(name, value) {
  put(name, value);
  keep(name, value);
}

function tell() {
  for (const press of document.querySelectorAll("[data-way]")) {
    press.setAttribute("aria-pressed", String(WAYS[press.dataset.way].is()));
  }
}

function turn(name) {
  WAYS[name].turn(!WAYS[name].is());
  tell();
}

put("drawn", kept("drawn"));
put("theme", kept("theme"));
machine.addEventListener("change", tell);
document.addEventListener("DOMContentLoaded", tell);

document.addEventListener("click", (event) => {
  const press = event.target.closest("[data-way]");
  if (press) turn(press.dataset.way);
});

// In the drawing of the editor a letter does what a press does.
document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.target.id !== "drawing") return;
  const name = Object.keys(WAYS).find((way) => WAYS[way].key === event.key);
  if (name) turn(name);
});

// Another page of this browser was turned: this one turns along.
addEventListener("storage", (event) => {
  if (event.key === "drawn" || event.key === "theme") put(event.key, event.newValue);
  tell();
});
