// How gestures say their things and places as the fields of an edit.

const NAMES = { openings: "opening", zones: "zone", plates: "plate" };

// The field that names a thing: an opening or a zone by its mark, all else by its key.
export function keyOf(shape) {
  const { thing, mark } = shape.dataset;
  const name = NAMES[thing.split("/")[0]];
  return name ? { [name]: mark } : { thing };
}

export function boxOf(shape) {
  const [x, y, width, height] = JSON.parse(shape.dataset.box);
  return { left: x, right: x + width, bottom: y, top: y + height };
}
