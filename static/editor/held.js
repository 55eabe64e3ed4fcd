// Writes that no answer came to: kept in this tab over a reload, and sent again by themselves until the server answers. To
// leave the page while there are any is asked about.

const WAITS = [1000, 2000, 4000, 8000, 15000];

export class Held {
  constructor(address, send) {
    this.key = `held ${address}`;
    this.send = send;
    this.tries = 0;
    this.later = 0;
    this.isKept = true;
    addEventListener("online", () => this.later && this.try());
    this.isEmpty = true;
    addEventListener("beforeunload", (event) => this.isEmpty || event.preventDefault());
  }

  // What a reload of this tab is to find again; without storage it is only in the page, and the page says so.
  keep(writes) {
    this.isEmpty = writes.length === 0;
    try {
      if (this.isEmpty) sessionStorage.removeItem(this.key);
      else sessionStorage.setItem(this.key, JSON.stringify(writes));
      this.isKept = true;
    } catch {
      this.isKept = false;
    }
  }

  kept() {
    try {
      return JSON.parse(sessionStorage.getItem(this.key) ?? "[]");
    } catch {
      return [];
    }
  }

  rest() {
    clearTimeout(this.later);
    this.later = 0;
    this.tries = 0;
  }

  soon() {
    clearTimeout(this.later);
    this.later = setTimeout(() => this.try(), WAITS[Math.min(this.tries, WAITS.length - 1)]);
    this.tries += 1;
  }

  try() {
    clearTimeout(this.later);
    this.later = 0;
    this.send();
  }
}
