// The buttons that name what is drawn next; the one that is drawn now is pressed, and pressing it again stops.

export function watchDraws(svg, gestures) {
  document.addEventListener("click", (event) => {
    const draw = event.target.closest("[data-draw]");
    if (draw && draw.ariaPressed === "true") gestures.stopDrawing();
    else if (draw) gestures.startDrawing(asked(draw));
  });
  svg.addEventListener("drawing:changed", ({ detail }) => {
    for (const draw of document.querySelectorAll("[data-draw-key]")) {
      draw.ariaPressed = String(draw.dataset.draw === detail.edit && draw.dataset.kind === detail.kind);
    }
  });
}

function asked({ dataset }) {
  return { kind: dataset.kind ?? "box", edit: dataset.draw, values: JSON.parse(dataset.values), words: dataset.words };
}
