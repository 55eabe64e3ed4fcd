// Lengths as a tape shows them, rounded to whole ticks first and then split. The server writes them the same way.

const NM = 25_400_000;

// Whole nanometres, and ticks of them, both with ties away from zero.
function ticksOf(inches, denominator) {
  const nm = Math.floor(Math.abs(inches) * NM + 0.5);
  return Math.floor((2 * nm * denominator + NM) / (2 * NM));
}

function divisor(one, other) {
  return other ? divisor(other, one % other) : one;
}

export function inWords(ticks, denominator) {
  const whole = Math.floor(ticks / denominator);
  const rest = ticks % denominator;
  const shared = divisor(rest, denominator) || 1;
  const fraction = rest ? `${rest / shared}/${denominator / shared}` : "";
  const [feet, inches] = [Math.floor(whole / 12), whole % 12];
  if (feet) return `${feet}'-${`${inches} ${fraction}`.trimEnd()}"`;
  if (!fraction) return `${inches}"`;
  return inches ? `${inches} ${fraction}"` : `${fraction}"`;
}

// A length of no sign: feet and inches to 1/denominator in., or whole millimetres.
export function said(inches, unit, denominator = 16) {
  if (unit === "mm") return `${Math.floor(Math.floor(Math.abs(inches) * NM + 0.5) / 1_000_000 + 0.5)} mm`;
  return inWords(ticksOf(inches, denominator), denominator);
}

// At most six figures, without zeros behind: how the server writes a plain number.
export function plain(number) {
  return String(Number(number.toPrecision(6)));
}

// To a whole number, ties to the even one, as the server's arithmetic does.
export function even(number) {
  const low = Math.floor(number);
  const part = number - low;
  if (part !== 0.5) return Math.round(number);
  return low % 2 === 0 ? low : low + 1;
}

// To a tenth, ties that are ties in binary too to the even one.
export function tenth(number) {
  const quarters = number * 4;
  return Number.isInteger(quarters) && Math.abs(quarters % 2) === 1 ? even(number * 10) / 10 : Number(number.toFixed(1));
}

// With true fractions, numerator over a slash.
export function lettered(words) {
  return words.replace(/(\d+) (\d+)\/(\d+)/, "$1\u2009$2⁄$3").replace(/\b(\d+)\/(\d+)/, "$1⁄$2");
}

// Inches of a length in this module's own words; null for any others.
export function read(words) {
  const metric = /^(\d+) mm$/.exec(words);
  if (metric) return Number(metric[1]) / 25.4;
  const found = /^(?:(\d+)'-)?(?:(\d+)(?= |"))? ?(?:(\d+)\/(\d+))?"$/.exec(words);
  if (!found) return null;
  const [feet, inches, over, under] = found.slice(1).map((part) => Number(part ?? 0));
  return feet * 12 + inches + (under ? over / under : 0);
}
