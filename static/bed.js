// The slider and the number beside it say the same temperature.
for (const slide of document.querySelectorAll("[data-degrees]")) {
  const degrees = document.getElementById(slide.dataset.degrees);
  slide.addEventListener("input", () => { degrees.value = slide.value; });
  degrees.addEventListener("input", () => { slide.value = degrees.value; });
}

// A field elsewhere begins as one of these and follows it, until somebody types in it.
for (const field of document.querySelectorAll("[data-follows]")) {
  const leader = document.getElementById(field.dataset.follows);
  const follow = (event) => {
    if (event.target === field) document.removeEventListener("input", follow);
    else field.value = leader.value;
  };
  if (leader) document.addEventListener("input", follow);
}
