// The bed page: one release of one panel, task by task. Everything it needs is in it; what is recorded stays here until the
// office has it.

import { Check } from "./check.js";
import { Outbox, whyNot } from "./outbox.js";
import { Sheets } from "./sheets.js";
import { watchBanner } from "./banner.js";
import { watchLists } from "./lists.js";
import { watchTake } from "./take.js";
import { watchTrouble } from "./trouble.js";
import { Work } from "./work.js";

const data = JSON.parse(document.getElementById("bed-data").textContent);
const outbox = new Outbox();
const work = new Work(data, outbox);
const undo = document.getElementById("bed-undo");
const by = document.getElementById("by");

const svg = document.getElementById("bed-svg");
const whole = svg.getAttribute("viewBox");
const WITH_TAPES = ["set-out", "check"];

function say(words) {
  const banner = document.getElementById("bed-banner");
  banner.textContent = words;
  banner.hidden = !words;
}

// A glove presses twice where it means once: a second press in the same place within this time is none.
const TWICE = 300;
const PLACE = 24;
let place = { x: 0, y: 0 };
let pressed = { at: -Infinity, x: 0, y: 0 };
addEventListener("pointerdown", ({ clientX, clientY }) => (place = { x: clientX, y: clientY }), true);

function isTwice() {
  const since = performance.now() - pressed.at;
  const isThere = Math.hypot(place.x - pressed.x, place.y - pressed.y) < PLACE;
  if (since >= 0 && since < TWICE && isThere) return true;
  pressed = { at: performance.now(), ...place };
  return false;
}

// Before anything is taken in: may this link record, whose record is it, and can this tablet keep it.
async function guarded(act) {
  if (isTwice()) return undefined;
  if (!data.mayRecord) return say("This link is for looking only. Ask the office for one that may record.");
  if (!work.by) {
    by.focus();
    return say("Type your name at the foot of the page first: every record bears one.");
  }
  const trouble = await whyNot();
  if (trouble) return say(trouble);
  say("");
  try {
    return await act();
  } catch (error) {
    return say(error.message);
  }
}

function show(task) {
  document.body.dataset.task = task;
  for (const button of document.querySelectorAll("nav [data-task]")) button.setAttribute("aria-pressed", String(button.dataset.task === task));
  for (const part of document.querySelectorAll("[data-of]")) part.hidden = part.dataset.of !== task;
  svg.setAttribute("viewBox", WITH_TAPES.includes(task) ? whole : svg.dataset.close);
  try {
    sessionStorage.setItem("bed-task", task);
  } catch {
    // The next start begins with the first task.
  }
}

function keptTask() {
  try {
    return sessionStorage.getItem("bed-task");
  } catch {
    return null;
  }
}

for (const button of document.querySelectorAll("nav [data-task]")) button.addEventListener("click", () => show(button.dataset.task));

// Undo stands where something was recorded; a record is never altered, it is withdrawn by another.
let last = null;
document.addEventListener("work:recorded", ({ detail }) => {
  last = detail.record;
  undo.querySelector("span").textContent = detail.words || "Taken back";
  undo.querySelector("button").disabled = last.kind === "withdraw";
});
undo.querySelector("button").addEventListener("click", () => last && guarded(() => work.withdraw(last, "undo at the bed")));

try {
  by.value = localStorage.getItem("bed-by") ?? "";
} catch {
  // Then it is typed again.
}
by.addEventListener("input", () => {
  try {
    localStorage.setItem("bed-by", by.value.trim());
  } catch {
    // Then it is typed again.
  }
});

new Sheets(work, guarded);
new Check(work, guarded);
watchLists(work, guarded);
watchTrouble(work, guarded);
watchBanner(work, outbox);
watchTake(data);
show(keptTask() ?? "set-out");
work.begin();
