// How gestures say their things and places as the fields of an edit.

const NAMES = { openings: "opening", zones: "zone", plates: "plate" };
const REMOVED = { ...NAMES, strips: "strip", fixings: "fixing" };

// The field that names a thing: an opening or a zone by its mark, all else by its key.
export function keyOf(shape) {
  const { thing, mark } = shape.dataset;
  const name = NAMES[thing.split("/")[0]];
  return name ? { [name]: mark } : { thing };
}

// The edit that removes a thing, null for the outline.
export function removalOf({ dataset }) {
  const name = REMOVED[dataset.thing.split("/")[0]];
  return name ? () => ({ edit: `remove_${name}`, [name]: dataset.mark }) : null;
}

export function boxOf(shape) {
  const [x, y, width, height] = JSON.parse(shape.dataset.box);
  return { left: x, right: x + width, bottom: y, top: y + height };
}
