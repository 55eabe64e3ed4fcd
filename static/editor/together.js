// Others at the same panel: the server says that a revision is there, and what it changed is put into the drawing as soon as
// nothing of one's own is under way. A form that is being typed in stays as it is.

import { Line } from "./line.js";

export class Together {
  constructor(editor, gestures, writes, take) {
    Object.assign(this, { editor, gestures, writes, take });
    this.newest = 0;
    this.asking = false;
    new Line(editor, (revision) => this.hear(revision));
    gestures.svg.addEventListener("gesture:ended", () => this.check());
    gestures.svg.addEventListener("drawing:changed", () => this.check());
    document.addEventListener("editor:settled", () => this.check());
  }

  hear(revision) {
    this.newest = Math.max(this.newest, revision);
    this.check();
  }

  get shown() {
    return Number(document.getElementById("revision").dataset.revision);
  }

  check() {
    if (this.asking || this.newest <= this.shown || this.gestures.current || this.writes.lost) return;
    this.asking = true;
    this.writes.look(() => this.follow()).then(() => (this.asking = false));
  }

  // A form that somebody is at stays as it was filled in: it is sent as based on what it shows.
  keepBases() {
    for (const form of document.querySelectorAll("#card form")) form.dataset.base ??= String(this.shown);
  }

  // Own writes that were queued before may have brought the page up to date by now.
  async follow() {
    if (this.newest <= this.shown) return;
    const { hidden, temperature } = this.writes.dressed({});
    const asked = new URLSearchParams({ revision: this.shown, hidden, temperature });
    try {
      const answer = await fetch(`${this.editor.dataset.since}?${asked}`);
      if (answer.status !== 200) return;
      this.keepBases();
      this.take(await answer.text());
    } catch {
      // The next hint asks again.
    }
  }
}
