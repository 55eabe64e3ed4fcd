// Equal gaps: an opening stands as far from its neighbour as two others stand apart, or in the middle between two.

const AXES = {
  x: { low: "left", high: "right", beside: ["bottom", "top"] },
  y: { low: "bottom", high: "top", beside: ["left", "right"] },
};

export function equalGaps(svg, axis, box, delta, own) {
  const { low, high, beside } = AXES[axis];
  const row = [...svg.querySelectorAll(".thing.is-opening")]
    .filter((shape) => shape.dataset.thing !== own)
    .map(boxOf)
    .filter((other) => other[beside[0]] < box[beside[1]] && box[beside[0]] < other[beside[1]])
    .sort((a, b) => a[low] - b[low]);
  const middle = (box[low] + box[high]) / 2 + delta;
  const before = row.filter((other) => other[high] <= middle).at(-1);
  const after = row.find((other) => other[low] >= middle);
  return [...repeated(axis, row, before, after, box), ...between(axis, before, after, box)];
}

function repeated(axis, row, before, after, box) {
  const { low, high } = AXES[axis];
  const found = [];
  for (let k = 0; k + 1 < row.length; k += 1) {
    const [a, b] = [row[k], row[k + 1]];
    const gap = b[low] - a[high];
    if (gap <= 0) continue;
    const name = `gap as ${a.mark} to ${b.mark}`;
    const bars = (from, to) => [
      [a[high], b[low]],
      [from, to],
    ];
    if (before) found.push(hitOf(axis, box[low], before[high] + gap, name, gap, bars(before[high], before[high] + gap)));
    if (after) found.push(hitOf(axis, box[high], after[low] - gap, name, gap, bars(after[low] - gap, after[low])));
  }
  return found;
}

function between(axis, before, after, box) {
  if (!before || !after) return [];
  const { low, high } = AXES[axis];
  const gap = (after[low] - before[high] - (box[high] - box[low])) / 2;
  const at = before[high] + gap;
  const bars = [
    [before[high], at],
    [after[low] - gap, after[low]],
  ];
  return gap > 0 ? [hitOf(axis, box[low], at, `middle between ${before.mark} and ${after.mark}`, gap, bars)] : [];
}

function hitOf(axis, from, at, name, size, bars) {
  return { from, hit: { axis, at, kind: "gap", name, size, bars } };
}

function boxOf({ dataset }) {
  const [x, y, width, height] = JSON.parse(dataset.box);
  return { mark: dataset.mark, left: x, right: x + width, bottom: y, top: y + height };
}
