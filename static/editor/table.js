// The table of the panel's things: opened by a word or a key, asked for again when the hand rests. Enter sets a row and goes
// to the next one down, a row that is chosen is chosen in the drawing and the other way round, rows pasted are looked at
// before they are put in.

import { formHeaders } from "../form_token.js";
import { changedIn, isChanged, makeDefault } from "./touched.js";

const REST = 400;

export class Table {
  constructor(editor, things, say) {
    Object.assign(this, { editor, things, say });
    this.part = document.getElementById("table-part");
    this.rows = document.getElementById("table");
    this.pasting = document.getElementById("pasting");
    this.pasted = document.getElementById("pasted");
    this.order = null;
    document.addEventListener("click", (event) => this.click(event.target));
    document.addEventListener("editor:settled", () => this.soon());
    document.addEventListener("editor:settled", () => this.pasted.value && this.look());
    addEventListener("beforeunload", (event) => (this.isTouched() || this.pasted.value) && event.preventDefault());
    document.addEventListener("things:chosen", () => this.mark());
    this.rows.addEventListener("focusin", (event) => this.follow(event.target.closest("tr")));
    this.rows.addEventListener("focusout", () => this.soon());
    this.rows.addEventListener("keydown", (event) => this.key(event));
    this.part.addEventListener("paste", (event) => this.paste(event));
    this.pasted.addEventListener("input", () => this.look());
    editor.addEventListener("htmx:afterRequest", (event) => this.answered(event.detail));
  }

  toggle() {
    this.part.hidden = !this.part.hidden;
    if (this.part.hidden) return document.getElementById("drawing").focus();
    this.makeRoom();
    this.load().then(() => (this.rows.querySelector("input[type=text]") ?? this.rows).focus({ preventScroll: true }));
  }

  // On a narrow page the values make room for the table.
  makeRoom() {
    const values = document.getElementById("values-toggle");
    if (values.offsetParent !== null && values.ariaExpanded === "true") values.click();
  }

  click(target) {
    if (target.closest("[data-toggle-table]")) this.toggle();
    if (target.closest("[data-copy-table]")) this.copy();
    const paste = target.closest("[data-paste-table]");
    if (paste) this.openPasting(this.pasting.hidden);
    const sort = target.closest("[data-sort]");
    if (sort) this.sortBy(sort.dataset.sort);
  }

  // A table that somebody has typed in, and not set, is left as it is.
  soon() {
    clearTimeout(this.later);
    if (!this.part.hidden) this.later = setTimeout(() => this.isTouched() || this.load(), REST);
  }

  isTouched() {
    return changedIn(this.rows).length > 0;
  }

  async load() {
    const at = document.activeElement;
    const place = this.rows.contains(at) ? [at.form?.dataset.row, at.name] : null;
    try {
      const answer = await fetch(this.editor.dataset.table);
      if (!answer.ok || this.isTouched()) return;
      this.rows.innerHTML = await answer.text();
    } catch {
      return;
    }
    if (this.order) this.sort();
    this.mark();
    if (place) this.field(...place)?.focus({ preventScroll: true });
  }

  field(row, name) {
    return [...this.rows.querySelectorAll("input, select")].find((input) => input.form?.dataset.row === row && input.name === name);
  }

  sortBy(name) {
    const isSame = this.order?.name === name;
    this.order = { name, way: isSame ? -this.order.way : 1 };
    this.sort();
  }

  // By the numbers that the server gave for lengths, by words for all else.
  sort() {
    const { name, way } = this.order;
    const heads = [...this.rows.querySelectorAll("[data-sort]")];
    const column = heads.findIndex((head) => head.dataset.sort === name);
    heads.forEach((head, k) => (head.closest("th").ariaSort = k === column ? (way > 0 ? "ascending" : "descending") : "none"));
    const value = (row) => row.cells[column].dataset.order;
    const rows = [...this.rows.querySelectorAll("tr[data-key]")];
    rows.sort((a, b) => way * value(a).localeCompare(value(b), undefined, { numeric: true }));
    this.rows.querySelector("tbody").append(...rows);
  }

  follow(row) {
    if (row?.dataset.key && row.dataset.key !== this.things.chosen) this.things.choose(row.dataset.key);
  }

  mark() {
    for (const row of this.rows.querySelectorAll("tr[data-key]")) {
      row.ariaSelected = String(row.dataset.key === this.things.chosen);
      if (row.ariaSelected === "true" && !this.rows.contains(document.activeElement)) row.scrollIntoView({ block: "nearest" });
    }
  }

  key(event) {
    if (!event.target.matches("input[type=text], select")) return;
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (by && event.target.matches("input")) {
      event.preventDefault();
      this.step(event.target, by);
    } else if (event.key === "Enter") {
      event.preventDefault();
      event.target.form.requestSubmit();
      this.step(event.target, 1);
    } else if (event.key === "Escape") {
      event.stopPropagation();
      if (!isChanged(event.target)) return this.toggle();
      takeBack(event.target);
      event.target.removeAttribute("aria-invalid");
    }
  }

  step(input, by) {
    const same = [...this.rows.querySelectorAll(`[name="${input.name}"]`)].filter((one) => one.closest("tr"));
    const next = same[same.indexOf(input) + by];
    next?.focus();
    next?.select?.();
  }

  // A refused row keeps what was typed, and its wrong cells are marked.
  answered({ requestConfig, xhr }) {
    const { thing, edit } = requestConfig.parameters ?? {};
    if (requestConfig.verb === "post" && edit === "put_table" && xhr.status === 200) this.putIn();
    if (requestConfig.verb !== "post" || edit !== "put_row") return;
    if (xhr.status === 200) this.setRow(thing, requestConfig.parameters);
    const told = [...document.querySelectorAll("#notice li")].map((line) => line.textContent.split(":")[0]);
    for (const input of this.rows.querySelectorAll("input[type=text]")) {
      if (input.form.dataset.row !== thing) continue;
      const isWrong = xhr.status === 422 && told.includes(input.name);
      input.setAttribute("aria-invalid", String(isWrong));
      if (isWrong) input.focus();
    }
  }

  // What was set is what the row shows from now on, and what its next change is based on.
  setRow(thing, sent) {
    const { revision } = document.getElementById("revision").dataset;
    for (const field of this.rows.querySelectorAll("input[type=text], select")) {
      if (field.form.dataset.row !== thing) continue;
      field.form.dataset.base = revision;
      if (field.value === sent[field.name]) makeDefault(field);
    }
  }

  putIn() {
    this.pasted.value = "";
    document.getElementById("pasted-look").replaceChildren();
    this.openPasting(false);
    document.getElementById("drawing").focus({ preventScroll: true });
  }

  async copy() {
    const text = await (await fetch(`${this.editor.dataset.table}/copy`)).text();
    await navigator.clipboard.writeText(text);
    this.say.speak(`${text.trim().split("\n").length - 1} rows copied`);
  }

  paste(event) {
    const text = event.clipboardData.getData("text/plain");
    if (event.target === this.pasted || !/[\t\n]/.test(text.trim())) return;
    event.preventDefault();
    this.openPasting(true);
    this.pasted.value = text;
    this.look();
  }

  openPasting(isOpen) {
    this.pasting.hidden = !isOpen;
    this.part.querySelector("[data-paste-table]").ariaExpanded = String(isOpen);
    if (isOpen) this.pasted.focus();
  }

  look() {
    clearTimeout(this.looking);
    this.looking = setTimeout(() => this.ask(), REST / 2);
  }

  async ask() {
    const text = this.pasted.value;
    const body = new URLSearchParams({ table: text });
    const answer = await fetch(`${this.editor.dataset.table}/look`, { method: "POST", headers: formHeaders, body }).catch(() => ({ ok: false }));
    if (!answer.ok || text !== this.pasted.value) return;
    const look = document.getElementById("pasted-look");
    look.innerHTML = await answer.text();
    this.pasting.dataset.base = look.querySelector("[data-revision]").dataset.revision;
  }
}

function takeBack(field) {
  if (field.matches("select")) for (const option of field.options) option.selected = option.defaultSelected;
  else field.value = field.defaultValue;
}
