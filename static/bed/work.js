// The records of this panel: what this tablet made, what others made as far as it is known here, and what follows from both.

import { bare } from "./outbox.js";
import { ofPanel } from "./store.js";
import { fold } from "./state.js";

const ASK = 10_000;

export class Work {
  constructor(data, outbox) {
    this.data = data;
    this.outbox = outbox;
    this.own = [];
    this.others = this.remembered();
    this.state = fold([]);
    this.newest = null;
    this.revs = {};
    document.addEventListener("outbox:changed", () => this.load());
    for (const [on, name] of [[document, "visibilitychange"], [window, "online"]]) on.addEventListener(name, () => document.hidden || this.ask());
  }

  async begin() {
    await this.load();
    this.ask();
    setInterval(() => document.hidden || this.ask(), ASK);
  }

  async load() {
    this.own = await ofPanel(this.data.panel).catch(() => this.own);
    this.tell();
  }

  // What this tablet holds counts once, with its arrival where the server has told it.
  tell() {
    const all = new Map(this.others.map((record) => [record.id, record]));
    for (const record of this.own) if (record.state !== "attention") all.set(record.id, { ...bare(record), arrival: all.get(record.id)?.arrival });
    this.state = fold([...all.values()]);
    document.dispatchEvent(new CustomEvent("work:changed"));
  }

  async ask() {
    const after = Math.max(0, ...this.others.map((record) => record.arrival));
    const answer = await fetch(`/bed/${this.data.panel}/now?after=${after}`, { cache: "no-store", redirect: "manual" }).catch(() => null);
    const said = answer?.ok && (await answer.json().catch(() => null));
    if (!said?.newest) return;
    this.newest = said.newest;
    this.revs = said.revs;
    this.hold = said.hold;
    if (said.records.length) {
      this.others = [...this.others, ...said.records.filter((record) => record.arrival > after)];
      this.remember();
    }
    this.tell();
  }

  async record(kind, body, words, more = {}) {
    const kept = await this.outbox.record(kind, { by: this.by, ...body }, this.data.release.id, this.data.panel, more);
    await this.load();
    document.dispatchEvent(new CustomEvent("work:recorded", { detail: { record: kept, words } }));
    return kept;
  }

  withdraw(record, words) {
    return this.record("withdraw", { why: words }, "", { corrects: record.id });
  }

  get by() {
    return document.getElementById("by").value.trim();
  }

  get key() {
    return `bed-others-${this.data.panel}`;
  }

  // A sheet that lies as another release had it, or a checkpoint that has moved since, is not taken for the one shown here.
  isOfThis(record) {
    return record.release === this.data.release.id;
  }

  revOf(record) {
    return `rev ${this.revs[record.release] ?? "?"}`;
  }

  remembered() {
    try {
      return JSON.parse(localStorage.getItem(this.key)) ?? [];
    } catch {
      return [];
    }
  }

  remember() {
    try {
      localStorage.setItem(this.key, JSON.stringify(this.others));
    } catch {
      // Then others' records are asked for again.
    }
  }
}
