// Something is wrong: a sentence and a photo for the office.

import { smaller } from "./photo.js";

export function watchTrouble(work, guarded) {
  const form = document.getElementById("trouble");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    guarded(async () => {
      const text = form.elements.text.value.trim();
      if (!text) throw new Error("What is wrong: found nothing, expected a sentence.");
      const file = form.elements.photo.files[0];
      const photo = file ? await smaller(file) : null;
      await work.record("finding", { about: document.body.dataset.task, text }, "Told to the office", { photo });
      form.reset();
    });
  });
  document.addEventListener("work:changed", () => {
    const told = work.state.findings.map((record) => {
      const made = document.createElement("li");
      made.textContent = `${record.body.text} (${record.body.by})`;
      return made;
    });
    document.getElementById("troubles").replaceChildren(...told);
  });
}
