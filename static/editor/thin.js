// Far away words are set larger than there is room for all: of two dimensions that touch the later one is left out, and
// long marks of openings keep their size.

const SHORT = 5;

export function thin(svg, isFar) {
  const words = [...svg.querySelectorAll("#layer-dimensions text")];
  for (const word of words) word.classList.remove("left-out");
  if (!isFar) return;
  for (const mark of svg.querySelectorAll("#layer-openings .strong")) mark.classList.toggle("long", mark.textContent.length > SHORT);
  const boxes = words.map((word) => word.getBoundingClientRect());
  const kept = [];
  words.forEach((word, k) => {
    if (kept.some((box) => touches(box, boxes[k]))) word.classList.add("left-out");
    else kept.push(boxes[k]);
  });
}

function touches(one, other) {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
