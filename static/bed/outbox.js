// Records go out in the order in which they were made, at most fifty at a time, by one tab at a time, until the server has
// said of each, by its id and digest, that it is stored. Whatever else comes back, the record stays here.

import { add, every, inState, isPersistent, note, photoOf, randomId, whyNot } from "./store.js";
import { sha256 } from "./sha256.js";

const BATCH = 50;
const PATIENCE = 15_000;
const SOONEST = 2_000;
const LATEST = 60_000;
const CLOSED = [401, 403, 404, 410];

const KEYS = ["id", "device", "sequence", "release", "kind", "body", "at", "corrects"];

// The same bytes as on the server: keys in order, no blanks. Bodies hold texts alone, so that no number is written two ways.
function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  return `{${Object.keys(value).sort().map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`).join(",")}}`;
}

export const bare = (record) => Object.fromEntries(KEYS.map((key) => [key, record[key]]));
const digestOf = (record) => sha256(new TextEncoder().encode(canonical(bare(record))));

export class Outbox {
  constructor() {
    this.closed = "";
    this.pause = 0;
    this.later = 0;
    this.draining = null;
    this.tabs = new BroadcastChannel("castcourse-bed");
    this.tabs.onmessage = () => this.show();
    for (const [on, name] of [[window, "online"], [document, "visibilitychange"], [window, "pageshow"]]) on.addEventListener(name, () => this.now());
    this.begin();
  }

  async begin() {
    await this.resend().catch(() => {});
    this.now();
    await this.tell();
  }

  // Resolves with the record once it is on disk: only then may it be shown as recorded. Raises an Error with the reason in words.
  async record(kind, body, release, panel, { corrects = null, photo = null } = {}) {
    const made = { id: crypto.randomUUID?.() ?? randomId(), release, panel, kind, body, at: new Date().toISOString(), corrects };
    const kept = await add(made, photo).catch(async () => {
      throw new Error((await whyNot()) || "This was not recorded: the tablet could not keep it. Try again.");
    });
    await this.tell();
    this.now();
    return kept;
  }

  now() {
    clearTimeout(this.later);
    this.pause = 0;
    return this.drain();
  }

  // What is recorded while a batch is on its way goes out right behind it.
  drain() {
    this.isAsked = true;
    this.draining ??= this.rounds().finally(() => {
      this.draining = null;
      this.again();
    });
    return this.draining;
  }

  async rounds() {
    while (this.isAsked) {
      this.isAsked = false;
      await this.alone().catch(() => {});
    }
  }

  // One tab at a time; where the browser has no locks, the server's "once per id" is enough.
  alone() {
    if (!navigator.locks) return this.send();
    return navigator.locks.request("castcourse-bed-outbox", { ifAvailable: true }, (lock) => (lock ? this.send() : undefined));
  }

  async again() {
    const waiting = await inState("here").catch(() => []);
    const photos = await this.photosLeft().catch(() => []);
    await this.tell();
    if (!waiting.length && !photos.length) return;
    this.pause = Math.min(LATEST, Math.max(SOONEST, this.pause * 2));
    clearTimeout(this.later);
    this.later = setTimeout(() => this.drain(), this.pause * (0.75 + Math.random() / 2));
  }

  async send() {
    for (;;) {
      const batch = (await inState("here")).slice(0, BATCH);
      if (!batch.length) break;
      if (!(await this.sent(batch))) return;
      await this.tell();
    }
    await this.sendPhotos();
  }

  // Whether every record of the batch has its answer.
  async sent(batch) {
    const records = await Promise.all(batch.map(async (record) => ({ ...bare(record), digest: await digestOf(record) })));
    const answer = await ask("/api/field/records", "POST", JSON.stringify({ records }), "application/json");
    this.closed = CLOSED.includes(answer.status) ? answer.words : "";
    if (!answer.said) {
      if (answer.wait) this.pause = Math.min(LATEST, answer.wait * 1000) / 2;
      return false;
    }
    const told = new Map((answer.said.records ?? []).map((one) => [one.id, one]));
    let isWhole = true;
    for (const record of records) isWhole = (await this.noted(record, told.get(record.id))) && isWhole;
    return isWhole;
  }

  async noted(record, told) {
    if (!told || told.digest !== record.digest) return false;
    if (told.state === "stored") await note(record.id, { state: "sent" });
    else if (told.state === "refused") await note(record.id, { state: "attention", why: told.why });
    else return false;
    return true;
  }

  async photosLeft() {
    return (await inState("sent")).filter((record) => record.photo);
  }

  async sendPhotos() {
    for (const record of await this.photosLeft()) {
      const photo = await photoOf(record.id);
      const bytes = new Uint8Array(await photo.arrayBuffer());
      const answer = await ask(`/api/field/records/${record.id}/photo`, "PUT", bytes, "image/jpeg");
      if (answer.said?.id !== record.id || answer.said.digest !== (await sha256(bytes))) return;
      await note(record.id, { photo: false });
    }
  }

  // A server that was put back from an older copy lacks what it had acknowledged: that goes out again.
  async resend() {
    const sent = (await inState("sent")).slice(-500);
    if (!sent.length) return;
    const body = JSON.stringify({ device: sent[0].device, ids: sent.map((record) => record.id) });
    const { said } = await ask("/api/field/known", "POST", body, "application/json");
    for (const id of said?.missing ?? []) if (sent.some((record) => record.id === id)) await note(id, { state: "here" });
  }

  async counts() {
    const [here, attention, photos] = [await inState("here"), await inState("attention"), await this.photosLeft()];
    return { here: here.length, attention: attention.length, photos: photos.length, closed: this.closed };
  }

  // Other tabs on this tablet hold the same records.
  tell() {
    this.tabs.postMessage("changed");
    return this.show();
  }

  async show() {
    const counts = await this.counts().catch(() => null);
    if (counts) document.dispatchEvent(new CustomEvent("outbox:changed", { detail: counts }));
  }

  // All that is not stored at the office, as a file to carry there.
  async asFile() {
    const left = (await every()).filter((record) => record.state !== "sent");
    const records = await Promise.all(left.map(async (record) => ({ ...bare(record), digest: await digestOf(record) })));
    return new Blob([JSON.stringify({ format: "castcourse-records/1", records }, null, 1)], { type: "application/json" });
  }
}

// An answer counts only with the expected status and as JSON: a page of somebody's sign-in is none.
async function ask(address, method, body, type) {
  const patience = new AbortController();
  const late = setTimeout(() => patience.abort(), PATIENCE);
  try {
    const answer = await fetch(address, { method, body, headers: { "content-type": type }, redirect: "manual", cache: "no-store", signal: patience.signal });
    const isJson = /^application\/(problem\+)?json/.test(answer.headers.get("content-type") ?? "");
    const said = isJson ? await answer.json().catch(() => null) : null;
    const wait = Number(answer.headers.get("retry-after")) || 0;
    if (answer.status === 200 && said) return { status: 200, said };
    return { status: isJson ? answer.status : 0, words: said?.detail ?? "", wait };
  } catch {
    return { status: 0, words: "", wait: 0 };
  } finally {
    clearTimeout(late);
  }
}

export { isPersistent, whyNot };
