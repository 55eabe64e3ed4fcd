// How near the drawing is looked at: what would be too small to read is left out step by step, and near by letters
// keep a size to read. The names stand in looks.css; nothing is asked of the server.

import { thin } from "./thin.js";

const PAPER = { width: 235, height: 165 };

// A joint of 3/8 in. narrower than 1.5 pixels needs no edge beside it; courses closer than 2.4 pixels are one area.
const BRICKS = [[0.25, "near"], [1.1, "middle"], [Infinity, "far"]];

// Pixels to a millimetre of the paper that the drawing is made for: its lettering is 2.5 to 3.5 mm high.
const LETTERS = [[2.4, "tiny"], [3.7, "little"], [6.5, "usual"], [Infinity, "steady"]];

// By this much letters may be larger or smaller near by before they are set anew.
const STEP = 1.4;

export class Distance {
  constructor(svg) {
    this.svg = svg;
    document.addEventListener("editor:settled", () => this.letters === "tiny" && thin(svg, true));
  }

  show(inchesPerPixel, home) {
    if (!Number.isFinite(inchesPerPixel) || inchesPerPixel <= 0) return;
    const paper = Math.max(home.width / PAPER.width, home.height / PAPER.height);
    const letters = step(LETTERS, paper / inchesPerPixel);
    this.put("bricks", step(BRICKS, inchesPerPixel));
    this.put("letters", letters);
    this.measure("--mm", paper);
    if (letters !== this.letters) thin(this.svg, letters === "tiny");
    this.letters = letters;
    if (letters === "steady") this.measure("--px", STEP ** Math.round(Math.log(inchesPerPixel) / Math.log(STEP)));
  }

  put(name, value) {
    if (this.svg.dataset[name] !== value) this.svg.dataset[name] = value;
  }

  // In steps, as every new size of letters makes the browser set them anew.
  measure(name, inches) {
    const value = `${inches.toPrecision(4)}px`;
    if (this[name] === value) return;
    this[name] = value;
    this.svg.style.setProperty(name, value);
  }
}

function step(steps, value) {
  return steps.find(([most]) => value < most)[1];
}
