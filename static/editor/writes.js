// Every request that changes the panel, one after another: its base revision and command id, what is said while it is
// under way, and what is kept when no answer comes. Nothing behind a lost write is sent before somebody has decided.

import { markAnswered } from "./touched.js";

export class Writes {
  constructor(editor) {
    this.editor = editor;
    this.notice = document.getElementById("notice");
    this.held = document.getElementById("held");
    this.waiting = [];
    this.busy = false;
    this.lost = null;
    editor.addEventListener("submit", (event) => this.submit(event));
  }

  // Forms of the page go the same way; without this script they are plain forms.
  submit(event) {
    const form = event.target;
    if (form.method !== "post") return;
    event.preventDefault();
    const values = Object.fromEntries(new FormData(form));
    if (!values.command_id) delete values.base_revision;
    this.add({ path: form.getAttribute("action"), values: () => values, form });
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
      this.next();
    });
  }

  async next() {
    if (this.busy || this.lost || this.waiting.length === 0) return;
    this.busy = true;
    const write = this.waiting.shift();
    if (write.look) await write.look();
    else await this.write(write);
    this.busy = false;
    write.done();
    this.next();
  }

  async write(write) {
    write.sent ??= this.dressed(write.values());
    const before = this.saved.textContent;
    const slow = setTimeout(() => this.say("Saving", "waiting"), 200);
    const status = await this.send(write);
    clearTimeout(slow);
    if (status === 0 || status >= 500 || status === 403 || status === 404) this.hold(write, status);
    else if (status !== 200) this.say(before, "saved");
    else if (write.form) markAnswered(write.form, write.sent);
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
    this.lost = write;
    this.say(`Not saved: ${status ? `the server answered ${status}` : "no answer from the server"}`, "lost");
    const again = button("Send again", () => this.waiting.unshift(write));
    const drop = button("Drop it", () => this.say("Dropped; load the page to see what is saved", "lost"));
    for (const choice of [again, drop]) choice.addEventListener("click", () => this.release());
    this.held.replaceChildren(again, drop);
  }

  release() {
    this.lost = null;
    this.held.replaceChildren();
    this.next();
  }

  get saved() {
    return document.getElementById("saved");
  }

  say(words, state) {
    this.saved.textContent = words;
    this.saved.dataset.state = state;
  }
}

function button(words, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = words;
  made.addEventListener("click", act);
  return made;
}
