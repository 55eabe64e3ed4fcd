// Brick of several colours is drawn in them once the page rests, unless this browser was told to leave them out.

const REST = 400;

export function watchColours(editor) {
  const box = document.querySelector('[data-layer="blend"]');
  let byHand = true;
  box.addEventListener("change", () => byHand && keep(box.checked ? "" : "no"));
  if (!editor.hasAttribute("data-colours") || kept() === "no") return;
  setTimeout(() => {
    byHand = false;
    if (!box.checked) box.click();
    byHand = true;
  }, REST);
}

// Where the browser keeps nothing, the choice lasts as long as the page.
function kept() {
  try {
    return localStorage.getItem("colours");
  } catch {
    return null;
  }
}

function keep(value) {
  try {
    localStorage.setItem("colours", value);
  } catch {
    return;
  }
}
