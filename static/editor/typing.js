// Typing while the hand draws or drags: a digit opens a small box with the sizes of what is under way, Tab holds one and
// goes to the next, Enter commits, Escape goes one step back. Lengths are understood by the server; what is not understood
// commits nothing.

const STARTS = /^[0-9.'-]$/;
const REST = 80;
const BESIDE = 24;

export class Typing {
  constructor(svg, gestures) {
    this.svg = svg;
    this.gestures = gestures;
    this.say = gestures.say;
    this.box = document.getElementById("typing");
    document.addEventListener("keydown", (event) => this.start(event));
    this.box.addEventListener("keydown", (event) => this.key(event));
    this.box.addEventListener("input", (event) => this.soon(event.target));
    this.box.addEventListener("submit", (event) => event.preventDefault());
    svg.addEventListener("gesture:moved", (event) => this.follow(event.detail));
    svg.addEventListener("gesture:ended", () => this.close());
    svg.addEventListener("drawing:changed", () => this.close());
  }

  start(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || !STARTS.test(event.key)) return;
    if (!this.box.hidden || event.target.closest("input, select, textarea")) return;
    const sizes = this.gestures.current?.sizes() ?? [];
    if (sizes.length === 0) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    this.open(sizes, event.key);
  }

  open(sizes, text) {
    this.names = sizes.map(({ name }) => name).join();
    this.box.replaceChildren(...sizes.map(fieldOf));
    this.box.hidden = false;
    this.place();
    const [first] = this.inputs;
    first.value = text;
    first.focus({ preventScroll: true });
    this.soon(first);
  }

  get inputs() {
    return [...this.box.querySelectorAll("input")];
  }

  // What is not held says how it is now.
  follow({ clientX, clientY }) {
    this.pointer = { clientX, clientY };
    if (this.box.hidden) return;
    const sizes = this.gestures.current.sizes();
    if (sizes.map(({ name }) => name).join() !== this.names) return this.close();
    sizes.forEach(({ words, value }, k) => {
      const input = this.inputs[k];
      input.placeholder = this.say.length(value);
      input.closest("label").querySelector(".words").textContent = words;
    });
    this.place();
  }

  // Beside the pointer, on the side where there is room.
  place() {
    const area = this.svg.parentElement.getBoundingClientRect();
    const { clientX, clientY } = this.pointer ?? this.gestures.frame.middle();
    const [x, y] = [clientX - area.left, clientY - area.top];
    const { offsetWidth, offsetHeight } = this.box;
    const left = x + BESIDE + offsetWidth < area.width ? x + BESIDE : Math.max(0, x - BESIDE - offsetWidth);
    const top = y + BESIDE + offsetHeight < area.height ? y + BESIDE : Math.max(0, y - BESIDE - offsetHeight);
    this.box.style.left = `${left}px`;
    this.box.style.top = `${top}px`;
  }

  key(event) {
    const act = { Tab: () => this.next(event), Enter: () => this.commit(), Escape: () => this.stepBack(event.target) }[event.key];
    event.stopPropagation();
    if (!act) return;
    event.preventDefault();
    act();
  }

  next(event) {
    const { inputs } = this;
    const to = inputs[(inputs.indexOf(event.target) + (event.shiftKey ? -1 : 1) + inputs.length) % inputs.length];
    this.understand(event.target);
    to.focus();
    to.select();
  }

  stepBack(input) {
    if (!input.value) return this.leave();
    input.value = "";
    this.understand(input);
  }

  leave() {
    this.close();
    this.svg.focus({ preventScroll: true });
  }

  close() {
    if (this.box.hidden) return;
    this.box.hidden = true;
    if (this.box.contains(document.activeElement)) this.svg.focus({ preventScroll: true });
  }

  soon(input) {
    clearTimeout(this.later);
    this.later = setTimeout(() => this.understand(input), REST);
  }

  // Enter again before the lengths are understood is the same Enter.
  async commit() {
    if (this.isCommitting) return;
    this.isCommitting = true;
    await this.understandAll();
    this.isCommitting = false;
  }

  async understandAll() {
    clearTimeout(this.later);
    const sound = await Promise.all(this.inputs.map((input) => this.understand(input)));
    if (this.box.hidden) return;
    if (sound.includes(false)) return this.inputs[sound.indexOf(false)].focus();
    this.gestures.enter();
    this.leave();
  }

  // Whether the field holds a length or nothing; a length is held from now on.
  async understand(input) {
    const text = input.value.trim();
    const found = text ? await this.ask(text, input) : null;
    if (input.value.trim() !== text || !this.box.contains(input)) return false;
    const echo = input.closest("label").querySelector("small");
    echo.textContent = found?.fault ?? (found ? `= ${found.words}` : "");
    input.setAttribute("aria-invalid", String(Boolean(found?.fault)));
    if (!found?.fault) this.gestures.current?.lock(input.name, found && { text, inches: found.inches });
    return !found?.fault;
  }

  async ask(text) {
    try {
      const asked = new URLSearchParams({ text, unit: this.svg.dataset.unit });
      const answer = await fetch(`/lengths?${asked}`);
      return answer.ok ? await answer.json() : { fault: `The server answered ${answer.status}` };
    } catch {
      return { fault: "No answer from the server" };
    }
  }
}

function fieldOf({ name, words }) {
  const label = document.createElement("label");
  label.innerHTML = '<span class="words"></span><input type="text" class="numbers" maxlength="60"><small role="status"></small>';
  label.querySelector(".words").textContent = words;
  label.querySelector("input").name = name;
  return label;
}
