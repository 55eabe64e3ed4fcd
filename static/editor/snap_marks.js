// What the hand has met, shown over the drawing: a dashed line across the face, and at the pole or the tape a mark for the
// kind of thing; a corner has its mark where it is, equal gaps are two bars. All keep their size on the screen.

const NS = "http://www.w3.org/2000/svg";
const SIZE = 7;

// Each within -1 to 1, to the right along the line and up.
const SHAPES = {
  corner: "M-1 -1V1H1V-1Z",
  edge: "M-1 -1V1M-.4 -1V1",
  opening: "M-1 -1H1V1H-1M-1 0H.4",
  course: "M-1 -.7H1V.7H-1Z",
  "head joint": "M-1 -1V1M1 -1V1M-1 0H1",
  "half bat": "M-1 -.7H1V.7H-1ZM0 -.7V.7",
  strip: "M-1 .4H1M-1 -.4H1",
  neighbour: "M-1 -1L1 0L-1 1",
  "neighbour course": "M-1 -1L1 0L-1 1",
  middle: "M-1 0H1M0 -1V1",
  gap: "M-1 -1V1M1 -1V1M-1 0H1",
};

export class Marks {
  constructor(svg, frame) {
    this.svg = svg;
    this.frame = frame;
    this.group = document.getElementById("snap-marks");
  }

  show(hits) {
    this.group.replaceChildren(...hits.flatMap((hit) => this.made(hit)));
  }

  clear() {
    this.group.replaceChildren();
  }

  made(hit) {
    if (hit.kind === "corner") return [this.glyph("corner", hit.x, hit.y)];
    const { width, height } = JSON.parse(this.svg.querySelector("#layer-things").dataset.home).panel;
    const isUpright = hit.axis === "x";
    const bars = (hit.bars ?? []).map((bar, k) => this.bar(hit.axis, bar, (isUpright ? height : width) * (k ? 0.5 : 0.46)));
    const line = isUpright ? [hit.at, 0, hit.at, height] : [0, hit.at, width, hit.at];
    const [x, y] = isUpright ? [hit.at, 0] : [0, hit.at];
    return [path(this.line(...line), "snap-line"), this.glyph(hit.kind, x, y, isUpright), ...bars];
  }

  line(x, y, toX, toY) {
    return `M${x} ${this.frame.height - y}L${toX} ${this.frame.height - toY}`;
  }

  bar(axis, [from, to], beside) {
    return path(axis === "x" ? this.line(from, beside, to, beside) : this.line(beside, from, beside, to), "snap-bar");
  }

  glyph(kind, x, y, isTurned = false) {
    const made = path(SHAPES[kind], "snap-mark");
    const size = SIZE * this.frame.inchesPerPixel();
    made.setAttribute("transform", `translate(${x} ${this.frame.height - y}) rotate(${isTurned ? 90 : 0}) scale(${size} ${-size})`);
    made.dataset.kind = kind;
    return made;
  }
}

function path(d, name) {
  const made = document.createElementNS(NS, "path");
  made.setAttribute("d", d);
  made.setAttribute("class", name);
  return made;
}
