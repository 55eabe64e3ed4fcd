// Things to tick: bricks placed, the list before concrete, sign-offs, concrete, strip and wash. A press records, another takes
// that back.

import { paragraph } from "./sheets.js";

export function watchLists(work, guarded) {
  for (const button of document.querySelectorAll("[data-kind]")) {
    const { kind, key, about, on, words } = button.dataset;
    button.addEventListener("click", () => {
      const isOn = work.state[kind].has(about);
      guarded(() => work.record(kind, { [key]: about, state: isOn ? "open" : on }, `${words}${isOn ? ": taken back" : ""}`));
    });
  }
  for (const button of document.querySelectorAll("[data-sign]")) {
    button.addEventListener("click", () => guarded(() => sign(work, button.dataset.sign)));
  }
  for (const button of document.querySelectorAll("[data-concrete]")) {
    const state = button.dataset.concrete;
    button.addEventListener("click", () => guarded(() => work.record("concrete", { state: work.state.concrete?.body.state === state ? "open" : state }, button.textContent)));
  }
  document.addEventListener("work:changed", () => show(work));
}

function sign(work, role) {
  const held = work.state.sign.get(role);
  if (held) return work.withdraw(held, "sign-off taken back");
  const other = [...work.state.sign.values()].find((record) => record.body.by === work.by);
  if (other) throw new Error(`${work.by} has signed already: the other sign-off is another person's.`);
  const open = facts(work).filter((fact) => !fact.isRight);
  if (open.length) throw new Error(`Not signed: ${open.map((fact) => fact.words).join("; ")}.`);
  return work.record("sign", { role }, `Signed by ${work.by}`);
}

// What must be right before anybody signs; open findings are told and do not block, the foreman decides.
export function facts(work) {
  const { state, data } = work;
  const counts = { laid: data.sheets.filter((sheet) => state.sheet.has(sheet.mark)).length, items: data.before.filter((item) => state.check.has(item)).length };
  const held = data.checkpoints.filter((point) => state.readings.get(point.mark)?.at(-1)?.body.verdict === "hold").length;
  return [
    { isRight: counts.laid === data.sheets.length, words: `${counts.laid} of ${data.sheets.length} sheets laid` },
    { isRight: held === data.checkpoints.length, words: `${held} of ${data.checkpoints.length} checkpoints read and in their band` },
    { isRight: counts.items === data.before.length, words: `${counts.items} of ${data.before.length} of this list ticked` },
    { isRight: !work.hold, words: work.hold ? `on hold: ${work.hold}` : "not on hold" },
  ];
}

function show(work) {
  const { state } = work;
  for (const button of document.querySelectorAll("[data-kind]")) button.setAttribute("aria-pressed", String(state[button.dataset.kind].has(button.dataset.about)));
  for (const button of document.querySelectorAll("[data-concrete]")) button.setAttribute("aria-pressed", String(state.concrete?.body.state === button.dataset.concrete));
  for (const button of document.querySelectorAll("[data-sign]")) {
    const held = state.sign.get(button.dataset.sign);
    button.setAttribute("aria-pressed", String(Boolean(held)));
    document.getElementById(`sign-${button.dataset.sign}`).textContent = held ? `Signed by ${held.body.by}` : "";
  }
  const told = facts(work).map(({ isRight, words }) => item(words, isRight));
  const findings = state.findings.length ? [item(`${state.findings.length} told to the office, open`, false)] : [];
  document.getElementById("before-facts").replaceChildren(...told, ...findings);
  const isSigned = work.data.signs.every(({ key }) => state.sign.has(key));
  const gate = document.getElementById("concrete-gate");
  gate.className = isSigned ? "right" : "attention";
  gate.textContent = isSigned ? "Signed by two: concrete may come." : "Not signed by two yet: no concrete.";
  count("brick", state.brick.size, document.querySelectorAll("[data-kind=brick]").length);
  count("before", work.data.signs.filter(({ key }) => state.sign.has(key)).length, work.data.signs.length);
  count("strip", state.strip.size, work.data.strip.length);
  document.getElementById("count-concrete").textContent = state.concrete?.body.state ?? "";
}

function count(task, done, all) {
  document.getElementById(`count-${task}`).textContent = all ? `${done} of ${all}` : "";
}

function item(words, isRight) {
  const made = document.createElement("li");
  made.append(paragraph(words, isRight ? "right" : "attention"));
  return made;
}
