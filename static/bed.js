// The slider and the number beside it say the same temperature.
for (const slide of document.querySelectorAll("[data-degrees]")) {
  const degrees = document.getElementById(slide.dataset.degrees);
  slide.addEventListener("input", () => { degrees.value = slide.value; });
  degrees.addEventListener("input", () => { slide.value = degrees.value; });
}
