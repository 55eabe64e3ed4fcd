// Every request that changes the panel, one after another: its base revision and command id, and what is said while it is
// under way. One that gets no answer is held and sent again by itself, as the same command, with those behind it waiting;
// one that is refused while others wait behind it holds them up until somebody has read why.

import { Held } from "./held.js";
import { markAnswered } from "./touched.js";

const REFUSED = new Set([409, 412, 422]);

export class Writes {
  constructor(editor) {
    this.editor = editor;
    this.notice = document.getElementById("notice");
    this.box = document.getElementById("held");
    this.waiting = [];
    this.busy = false;
    this.lost = null;
    this.card = null;
    this.held = new Held(editor.dataset.edits, () => this.again());
    editor.addEventListener("submit", (event) => this.submit(event));
    this.takeKept();
  }

  // Forms of the page go the same way; without this script they are plain forms.
  async submit(event) {
    const form = event.target;
    if (form.method !== "post" || form.dataset.plain) return;
    event.preventDefault();
    if (form.closest("#card")) await this.card?.now();
    const values = Object.fromEntries(new FormData(form));
    if (form.dataset.base) values.base_revision = form.dataset.base;
    else if (!values.command_id) delete values.base_revision;
    const write = { path: form.getAttribute("action"), values: () => values, form };
    if (this.lost && this.notice.contains(form)) this.decided(write);
    else this.add(write);
  }

  // `values` is asked when the write is sent, so that a step is taken from where the thing stands by then.
  edit(values) {
    return this.add({ path: this.editor.dataset.edits, values });
  }

  // A look at the panel that must show what the writes before it made.
  look(look) {
    return this.add({ look });
  }

  // Resolves when the write is answered, one way or the other.
  add(write) {
    return new Promise((done) => {
      this.waiting.push({ ...write, done });
      this.keep();
      if (this.lost) this.tellHeld();
      this.next();
    });
  }

  async next() {
    if (this.busy || this.lost || this.waiting.length === 0) return;
    this.busy = true;
    const write = this.waiting.shift();
    this.isFromCard = Boolean(write.form?.closest("#card"));
    this.now = write.look ? null : write;
    const status = await (write.look ? looked(write) : this.write(write));
    this.now = null;
    this.busy = false;
    this.keep();
    if (!this.lost || this.lost.isRefused) write.done?.(status);
    this.next();
  }

  // What is not answered yet is found again by a reload of this tab, from the first to the last.
  keep() {
    const first = this.now ?? (this.lost?.isRefused ? null : this.lost?.write);
    this.held.keep([...(first ? [first] : []), ...this.writesWaiting()].map(keptOf));
  }

  async write(write) {
    write.sent ??= this.dressed(write.values());
    this.keep();
    const before = this.saved.textContent;
    const slow = setTimeout(() => this.say("Saving", "waiting"), 200);
    const status = await this.send(write);
    clearTimeout(slow);
    if (status === 0 || status >= 500 || status === 401 || status === 403 || status === 404) return this.hold(write, status);
    this.held.rest();
    if (status !== 200 && this.saved.dataset.state !== "lost") this.say(before, "saved");
    if (REFUSED.has(status)) this.refused(write, status);
    else if (status === 200 && write.form) markAnswered(write.form, write.sent);
    return status;
  }

  dressed(values) {
    return {
      command_id: crypto.randomUUID(),
      base_revision: document.getElementById("revision").dataset.revision,
      temperature: document.getElementById("temperature").value,
      hidden: [...document.querySelectorAll("[data-layer]:not(:checked)")].map((box) => box.dataset.layer).join(" "),
      ...values,
    };
  }

  // The answer's status, 0 for none. What it holds is swapped in by htmx.
  send(write) {
    return new Promise((answered) => {
      const heard = (event) => {
        if (event.detail.requestConfig.verb !== "post") return;
        this.editor.removeEventListener("htmx:afterRequest", heard);
        answered(event.detail.xhr.status);
      };
      this.editor.addEventListener("htmx:afterRequest", heard);
      const how = { source: this.editor, target: this.notice, swap: "innerHTML", values: write.sent };
      htmx.ajax("POST", write.path, how).catch(() => {});
    });
  }

  // The same command again is made once, whether or not it had arrived.
  hold(write, status) {
    this.lost = { write, status };
    this.tellHeld();
    if (status === 0 || status >= 500) this.held.soon();
    return status;
  }

  tellHeld() {
    const { status } = this.lost;
    const count = this.writesWaiting().length + (this.lost.isRefused ? 0 : 1);
    const changes = count === 1 ? "1 change" : `${count} changes`;
    if (this.lost.isRefused) return this.tellWaiting(changes);
    this.say(`Not saved: ${status ? `the server answered ${status}` : "no answer from the server"}`, "lost");
    const kept = this.held.isKept ? "held here, also over a reload of this page" : "held in this page only: do not close it";
    const on = status === 0 || status >= 500 ? ", and sent when the server answers" : "";
    this.box.replaceChildren(words(`${changes} ${kept}${on}.`), this.choice("Send again", () => this.again()), this.choice("Drop", () => this.drop()));
  }

  tellWaiting(changes) {
    this.box.replaceChildren(words(`${changes} behind this one, not sent yet.`), this.choice("Go on", () => this.release()), this.choice("Drop", () => this.drop()));
  }

  writesWaiting() {
    return this.waiting.filter((write) => !write.look);
  }

  // Those behind a refused one may rest on it.
  refused(write, status) {
    if (this.writesWaiting().length === 0) return;
    this.lost = { write, status, isRefused: true };
    this.tellHeld();
  }

  // The answer to a refusal goes before those that wait.
  decided(write) {
    this.waiting.unshift(write);
    this.release();
  }

  again() {
    if (!this.lost) return;
    if (!this.lost.isRefused) this.waiting.unshift(this.lost.write);
    this.release();
  }

  drop() {
    const dropped = [...(this.lost.isRefused ? [] : [this.lost.write]), ...this.writesWaiting()];
    this.waiting = this.waiting.filter((write) => write.look);
    this.held.rest();
    for (const write of dropped) write.done?.(0);
    this.say("Dropped; load the page to see what is saved", "lost");
    this.release();
  }

  release() {
    this.lost = null;
    this.box.replaceChildren();
    this.keep();
    this.next();
  }

  // What an earlier load of this page could not send comes first.
  takeKept() {
    this.waiting = this.held.kept().map(({ path, sent, values }) => ({ path, sent, values: () => values }));
    this.next();
  }

  get saved() {
    return document.getElementById("saved");
  }

  say(words, state) {
    this.saved.textContent = words;
    this.saved.dataset.state = state;
  }

  choice(words, act) {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = words;
    made.addEventListener("click", act);
    return made;
  }
}

// A look that fails says so by itself; it holds up no write.
async function looked({ look }) {
  try {
    await look();
  } catch {
    return 0;
  }
  return 200;
}

// A step is told as it would be sent now: a reload knows nothing of what it was measured from.
function keptOf(write) {
  return write.sent ? { path: write.path, sent: write.sent } : { path: write.path, values: write.values() };
}

function words(text) {
  const made = document.createElement("p");
  made.textContent = text;
  return made;
}
