// The history is asked for when its fold is opened, and again when the hand rests after a change while it is open.

const REST = 500;

export function watchLog(editor) {
  const fold = document.getElementById("log-fold");
  let later = 0;
  const load = () => fold.open && htmx.ajax("GET", editor.dataset.history, { source: "#log", target: "#log", swap: "innerHTML show:none" }).catch(() => {});
  fold.addEventListener("toggle", load);
  document.addEventListener("editor:settled", () => {
    clearTimeout(later);
    later = setTimeout(() => fold.contains(document.activeElement) || load(), REST);
  });
}
