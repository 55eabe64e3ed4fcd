// What the bottom line says: the place under the pointer, and what a gesture would do.

export class Say {
  constructor(svg, line) {
    this.svg = svg;
    this.line = line;
    this.unit = svg.dataset.unit;
  }

  words(text) {
    this.line.textContent = text;
  }

  // Said in the bottom line and to who cannot see it.
  speak(text) {
    this.words(text);
    document.getElementById("live").textContent = text;
  }

  length(value) {
    return this.unit === "mm" ? `${Math.round(value * 25.4)} mm` : feet(value);
  }

  // A length as somebody would type it where it is on the tape's marks, else exact to the nanometre.
  typed(value) {
    if (this.unit === "mm") return `${millimetres(value * 25.4)} mm`;
    const ticks = value * 16;
    return Math.abs(ticks - Math.round(ticks)) < 1e-6 ? feet(value) : `${Number(value.toFixed(8))} in`;
  }

  place(at) {
    this.words(`${this.length(at.x)} across, ${this.length(at.y)} up${this.course(at.y)}`);
  }

  // The course is read off the list that the server gave.
  course(y) {
    const [first, feet] = JSON.parse(this.svg.querySelector("#snap").dataset.courses);
    const above = feet.findIndex((foot) => foot > y);
    return above > 0 ? `, course ${first + above - 1}` : "";
  }

  moved({ dx, dy, hits }) {
    const parts = [];
    if (dx) parts.push(`${this.length(Math.abs(dx))} ${dx < 0 ? "left" : "right"}`);
    if (dy) parts.push(`${this.length(Math.abs(dy))} ${dy < 0 ? "down" : "up"}`);
    this.words([parts.join(", ") || "not moved", ...this.met(hits)].join("; "));
  }

  slid(up, delta) {
    const way = up ? (delta < 0 ? "down" : "up") : delta < 0 ? "left" : "right";
    this.words(`${up ? "Courses" : "Bond"} ${this.length(Math.abs(delta))} ${way}`);
  }

  point({ x, y, hits }) {
    this.words([`${this.length(x)} across, ${this.length(y)} up`, ...this.met(hits)].join("; "));
  }

  // What was met and where it is: `top of course 14 = 3'-1 5/16"`.
  met(hits) {
    return hits.map((hit) => {
      if (hit.kind === "corner") return `${hit.name} = ${this.length(hit.x)}, ${this.length(hit.y)}`;
      return `${hit.name} = ${this.length(hit.size ?? hit.at)}`;
    });
  }

  rise(value) {
    this.words(`Rise ${this.length(value)}`);
  }

  // Sizes of what is being drawn, by their words.
  drawn(sizes, hits) {
    const said = sizes.map(({ words, value }) => `${words.toLowerCase()} ${this.length(value)}`).join(", ");
    this.words([said, ...this.met(hits)].join("; "));
  }

  sized(box, hits) {
    const size = `${this.length(box.right - box.left)} x ${this.length(box.top - box.bottom)}`;
    this.words([size, ...this.met(hits)].join("; "));
  }
}

// The lines that the server gave are rounded to some nanometres: a thousandth of a millimetre is meant as it reads.
function millimetres(value) {
  const near = Math.round(value * 1000) / 1000;
  return Math.abs(value - near) < 1e-4 ? near : Number(value.toFixed(6));
}

// Feet, inches and sixteenths, rounded to whole ticks first, then split.
function feet(value) {
  const ticks = Math.round(Math.abs(value) * 16);
  const whole = Math.floor(ticks / 192);
  const inch = Math.floor((ticks % 192) / 16);
  let [top, below] = [ticks % 16, 16];
  while (top && top % 2 === 0) [top, below] = [top / 2, below / 2];
  const fraction = top ? `${top}/${below}` : "";
  const rest = [inch || !fraction ? inch : "", fraction].filter((part) => part !== "").join(" ");
  return `${value < 0 && ticks ? "-" : ""}${whole ? `${whole}'-${inch ? "" : fraction ? "0 " : ""}` : ""}${rest}"`;
}
