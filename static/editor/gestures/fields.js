// How gestures say their things and places as the fields of an edit.

export function keyOf(shape) {
  return { [shape.dataset.thing.startsWith("zones") ? "zone" : "opening"]: shape.dataset.mark, shape: "rect" };
}

export function placed(say, box) {
  const { left, right, bottom, top } = box;
  const sides = { x: left, y: bottom, width: right - left, height: top - bottom };
  return Object.fromEntries(Object.entries(sides).map(([name, value]) => [name, say.typed(value)]));
}
