// Which fields hold what is not saved: what the server filled in, and what was sent and taken, is not touched.

// Whether somebody is at work in a part: stands in a field of it, or has typed or chosen what is not in it yet, wherever
// they stand by now. A form that was answered is no longer worked at, until something else is typed or chosen in it.
export function isTouched(part) {
  const at = document.activeElement;
  const isThere = part.contains(at) && at.matches("input, select") && !at.form?.dataset.answered;
  return isThere || changedIn(part).length > 0;
}

export function changedIn(part) {
  return [...part.querySelectorAll("input:not([type=hidden]), select, textarea")].filter(isChanged);
}

export function isChanged(field) {
  if (field.matches("select")) return [...field.options].some((option) => option.selected !== option.defaultSelected);
  return field.checked !== field.defaultChecked || field.value !== field.defaultValue;
}

// What was sent and taken is what the form holds by now; what was typed since then is not.
export function markAnswered(form, sent) {
  form.dataset.answered = "yes";
  for (const field of form.elements) {
    const isTicked = field.matches("[type=checkbox], [type=radio]");
    if (isTicked || sent[field.name] === field.value) makeDefault(field);
  }
}

export function makeDefault(field) {
  if (field.matches("select")) for (const option of field.options) option.defaultSelected = option.selected;
  else if (field.matches("[type=checkbox], [type=radio]")) field.defaultChecked = field.checked;
  else if (field.matches("input")) field.defaultValue = field.value;
}
