// On a narrow screen the values come and go below or beside the drawing; what asks for a value brings them back.

export function watchDrawer(editor) {
  const press = document.getElementById("values-toggle");
  const show = (isShown) => {
    editor.classList.toggle("values-away", !isShown);
    press.setAttribute("aria-expanded", String(isShown));
  };
  press.addEventListener("click", () => show(editor.classList.contains("values-away")));
  document.getElementById("drawing").addEventListener("keydown", (event) => event.key === "Enter" && show(true), true);
}
