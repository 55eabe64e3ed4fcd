// Hears which revisions there are, while the page is seen. A browser has six connections to a server for all its pages: three
// pages hold a stream, each by a lock of its own, and any other asks now and then.

const STREAMS = 3;
const EVERY = 1500;

export class Line {
  constructor(editor, hear) {
    Object.assign(this, { editor, hear, isOpen: false });
    document.addEventListener("visibilitychange", () => this.turn());
    addEventListener("pageshow", () => this.turn());
    addEventListener("pagehide", () => this.close());
    this.turn();
  }

  turn() {
    if (document.hidden) this.close();
    else if (!this.isOpen) this.open();
  }

  async open() {
    this.isOpen = true;
    for (let slot = 0; slot < STREAMS; slot += 1) if (await this.takes(slot)) return;
    if (!this.isOpen) return;
    await this.ask();
    this.later = setTimeout(() => this.isOpen && this.open(), EVERY);
  }

  // Whether the stream of this number was free; it is held until the page is left.
  takes(slot) {
    return new Promise((answer) => {
      navigator.locks.request(`castcourse stream ${slot}`, { ifAvailable: true }, (lock) => {
        answer(lock !== null);
        return lock !== null && this.isOpen ? this.listen() : undefined;
      });
    });
  }

  listen() {
    this.events = new EventSource(this.editor.dataset.events);
    this.events.addEventListener("message", (event) => this.hear(Number(event.data)));
    return new Promise((letGo) => (this.letGo = letGo));
  }

  async ask() {
    const answer = await fetch(`${this.editor.dataset.events}/now`).catch(() => null);
    if (answer?.ok) this.hear(await answer.json());
  }

  close() {
    this.isOpen = false;
    clearTimeout(this.later);
    this.events?.close();
    this.letGo?.();
  }
}
