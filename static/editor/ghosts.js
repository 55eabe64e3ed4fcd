// The dashed shapes that move while the hand is at it; each stays until the answer stands in the drawing. They lie in a sheet
// of their own above the drawing, so that moving one does not paint ten thousand bricks again.

const NS = "http://www.w3.org/2000/svg";

export class Ghosts {
  constructor(frame) {
    this.group = document.getElementById("ghost");
    this.frame = frame;
  }

  // A copy of a thing's shape, to be moved by a transform.
  copy(shape) {
    const ghost = shape.cloneNode(false);
    for (const name of ["id", "data-thing"]) ghost.removeAttribute(name);
    return this.show(ghost);
  }

  shape(name) {
    return this.show(document.createElementNS(NS, name));
  }

  show(ghost) {
    ghost.setAttribute("class", "ghost-shape");
    this.group.append(ghost);
    return ghost;
  }

  // A box of the face frame as the place of a rectangle or an ellipse.
  place(shape, { left, right, bottom, top }) {
    if (shape.tagName === "ellipse") {
      const middle = { cx: (left + right) / 2, cy: this.frame.height - (bottom + top) / 2 };
      return put(shape, { ...middle, rx: (right - left) / 2, ry: (top - bottom) / 2 });
    }
    put(shape, { x: left, y: this.frame.height - top, width: right - left, height: top - bottom });
  }

  // Points of the face frame as a path.
  trace(path, points, isClosed) {
    const line = points.map(([x, y]) => `${x} ${this.frame.height - y}`).join("L");
    path.setAttribute("d", `M${line}${isClosed ? "Z" : ""}`);
  }
}

function put(shape, values) {
  for (const [name, value] of Object.entries(values)) shape.setAttribute(name, value);
}
