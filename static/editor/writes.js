// Every write of the page: its base revision and command id, what is said while it is under way, and when it fails.

export class Writes {
  constructor(editor) {
    this.editor = editor;
    this.saved = document.getElementById("saved");
    this.notice = document.getElementById("notice");
    editor.addEventListener("htmx:configRequest", (event) => this.prepare(event));
    editor.addEventListener("htmx:beforeRequest", (event) => this.begin(event));
    editor.addEventListener("htmx:afterRequest", (event) => this.end(event));
    for (const kind of ["htmx:sendError", "htmx:timeout"]) {
      editor.addEventListener(kind, () => this.lost("no answer from the server"));
    }
  }

  get revision() {
    return document.getElementById("revision").dataset.revision;
  }

  prepare(event) {
    const detail = event.detail;
    if (detail.verb === "get") return;
    const values = detail.parameters;
    if (!values.command_id) {
      values.command_id = crypto.randomUUID();
      values.base_revision = this.revision;
    }
    values.temperature = document.getElementById("temperature").value;
    values.hidden = [...document.querySelectorAll("[data-layer]:not(:checked)")].map((box) => box.dataset.layer).join(" ");
    this.last = { path: detail.path, values: Object.fromEntries(Object.entries(values)) };
  }

  begin(event) {
    if (event.detail.requestConfig.verb === "get") return;
    this.slow = setTimeout(() => this.say("Saving", "waiting"), 200);
  }

  end(event) {
    if (event.detail.requestConfig.verb === "get") return;
    clearTimeout(this.slow);
    const status = event.detail.xhr.status;
    if (status >= 500 || status === 403 || status === 404) this.lost(`the server answered ${status}`);
  }

  // The write stays on the page and goes again, as the same command, when asked.
  lost(why) {
    clearTimeout(this.slow);
    this.say(`Not saved: ${why}`, "lost");
    const again = document.createElement("button");
    again.type = "button";
    again.textContent = "Send again";
    again.addEventListener("click", () => {
      again.remove();
      this.post(this.last.path, this.last.values);
    });
    this.notice.replaceChildren(again);
  }

  say(words, state) {
    const saved = document.getElementById("saved");
    saved.textContent = words;
    saved.dataset.state = state;
  }

  edit(name, values) {
    return this.post(this.editor.dataset.edits, { edit: name, ...values });
  }

  post(path, values) {
    return htmx.ajax("POST", path, { source: this.editor, target: this.notice, swap: "innerHTML", values });
  }
}
