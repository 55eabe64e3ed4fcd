// Verdicts in the words of tape and hand, as the server writes them.

import { even, plain, said, tenth } from "./lengths.js";
import { SETTABLE, TICKS, mostGiven } from "./verdict.js";

const REPLACES = "This takes the place of what an earlier reading said for these joints.";
const EXACT = 1e-6;

export function amount(inches, unit) {
  const ticks = Math.abs(inches) / TICKS[unit];
  const whole = even(ticks);
  if (whole && (unit === "in" || Math.abs(ticks - whole) < EXACT)) return unit === "mm" ? `${plain(whole / 4)} mm` : said(whole * TICKS[unit], unit, 64);
  if (ticks < 1 / 2) return inches ? `under ${amount(TICKS[unit], unit)}` : said(0, unit);
  return `${plain(tenth(Math.abs(inches) * 25.4))} mm`;
}

export function told(about, value, real, tape) {
  const { unit, degree, point } = about;
  const differs = tape !== null && amount(value, unit) !== amount(real, unit);
  const corrected = differs ? `, ${amount(real, unit)} by a steel tape at ${plain(tape)} °${degree}` : "";
  return `${point.mark} reads ${amount(value, unit)}${corrected}: ${offHere(about)}.`;
}

export function instruction(about, kind, spread) {
  const parts = { hold, adjust, relay, measure }[kind](about, spread);
  return [kind === "hold" ? "" : heat(about), ...parts].filter(Boolean).join(" ");
}

const bandOf = ({ need, unit }) => amount(need.band, unit);
const dayOf = ({ point, degree }) => `${plain(point.bed_low)} to ${plain(point.bed_high)} °${degree}`;

function offHere(about) {
  const { need, unit } = about;
  const words = off(need.error, unit);
  return amount(need.error, unit) === bandOf(about) && !need.isRightHere ? `just over ${words}` : words;
}

function off(error, unit) {
  if (Math.abs(error) < SETTABLE / 2) return "right";
  return `${amount(error, unit)} ${error > 0 ? "long" : "short"}`;
}

function hold(about) {
  const { ahead, point, need } = about;
  const words = need.isWithin
    ? [`Hold: lay on as it is, within ${bandOf(about)}${there(about)}.`]
    : [`Hold: past ${bandOf(about)} here, but ${coming(about)}: it comes back by itself.`, "Lay on as it is and read again at the next checkpoint."];
  if (ahead.joints && ahead.before && !point.control) words.push(REPLACES);
  return words;
}

function there(about) {
  if (!about.ahead.line) return " here";
  if (about.bed === null) return ` here and, with the bed at any of the day's ${dayOf(about)}, at ${about.ahead.line}`;
  return ` here and at ${about.ahead.line}`;
}

function coming(about) {
  const { bed, need, unit, ahead, degree } = about;
  if (bed === null) {
    const ends = [-1, 1].map((side) => moved(need.coming + side * need.doubt, unit));
    return `over the day's ${dayOf(about)} the liner makes ${ends.join(" to ")} up to ${ahead.line}`;
  }
  return `liner at ${plain(bed)} °${degree} ${need.coming > 0 ? "grows" : "shrinks"} ${amount(need.coming, unit)} up to ${ahead.line}`;
}

function moved(by, unit) {
  return `${amount(by, unit)} ${by > 0 ? "longer" : "shorter"}`;
}

function heat(about) {
  const { bed, explained, need, point, unit, degree } = about;
  if (bed === null || need.isRightHere) return "";
  const [rest, reference] = [need.error - explained, point.reference_temperature];
  const [degrees, name] = [bed - reference, bed > reference ? "heat" : "cold"];
  const part = amount(explained, unit);
  if (Math.abs(rest) <= need.band) {
    const rise = `${plain(Math.abs(degrees))} °${degree} ${degrees > 0 ? "over" : "under"} ${plain(reference)}`;
    const isAll = Math.abs(explained) > Math.abs(need.error);
    const makes = isAll ? `${rise} would make even ${part}` : `${part} of it comes from ${rise}`;
    return `It is the ${name}: ${makes}. Wait for the window ${windowOf(about, rest)} and read again, or do this now.`;
  }
  const atReference = `at ${plain(reference)} °${degree} it would be ${off(rest, unit)}`;
  if (Math.abs(explained) < SETTABLE / 2) return "It does not come from the bed's temperature.";
  const verb = explained > 0 === need.error > 0 ? "makes" : "hides";
  return `The ${name} ${verb} ${part} of it; ${atReference}.`;
}

function windowOf({ point, need, degree }, rest) {
  const [low, high] = [-1, 1].map((side) => (side * need.band - rest) / point.grows_per_degree);
  return degrees(point.reference_temperature + low, point.reference_temperature + high, degree);
}

function degrees(low, high, degree) {
  const [first, last] = [Math.ceil(low), Math.floor(high)];
  if (first > last) return `${tenth(low).toFixed(1)} to ${tenth(high).toFixed(1)} °${degree}`;
  return `${first} to ${last} °${degree}`;
}

function adjust(about, spread) {
  const { need, unit, ahead } = about;
  const verb = spread.ticks > 0 ? "squeeze" : "stretch";
  const over = spread.joints === 1 ? "the next joint" : `the next ${spread.joints} joints`;
  const first = Math.abs(need.coming) + need.doubt >= SETTABLE / 2 ? [`${sentence(coming(about))}.`] : [];
  return [
    ...first,
    `Adjust: spread ${amount(spread.total, unit)} over ${over}: ${verb} ${sizes(spread, unit)}.`,
    `${sentence(ahead.line)}, ${ahead.at}, then is ${arrived(about, spread)}.`,
    REPLACES,
  ];
}

function arrived(about, spread) {
  const left = about.need.arriving - spread.total;
  if (about.bed === null) return `within ${bandOf(about)} with the bed at any of the day's ${dayOf(about)}`;
  return off(left, about.unit) + (Math.abs(left) < SETTABLE / 2 ? "" : `, within ${bandOf(about)}`);
}

const sentence = (words) => words.slice(0, 1).toUpperCase() + words.slice(1);

// How many joints change by how many ticks, the most joints first; none by nothing.
function counts({ joints, ticks }) {
  const [less, more] = [Math.floor(Math.abs(ticks) / joints), Math.abs(ticks) % joints];
  return [[joints - more, less], [more, less + 1]].filter(([count, each]) => count && each).sort((one, other) => other[0] - one[0]);
}

function sizes(spread, unit) {
  const each = counts(spread).map(([count, ticks]) => [count, amount(ticks * spread.tick, unit)]);
  if (spread.joints === 1) return `it by ${each[0][1]}`;
  if (each[0][0] === spread.joints) return `each by ${each[0][1]}`;
  if (each.length === 1) return `${each[0][0]} of them by ${each[0][1]}, evenly apart`;
  const [[many, by], [few, other]] = each;
  return `${many} ${many === 1 ? "joint" : "joints"} by ${by} and ${few} by ${other}, mixed evenly`;
}

function relay(about) {
  const { need, ahead, unit } = about;
  if (need.isRightHere) return [`Stop: what is laid is right, but ${coming(about)}, and ${atMost(about)}.`, `Lay on only while the bed is ${reachable(about)}.`];
  const past = need.least - 2 * need.doubt;
  return [
    ahead.joints ? `Relay: ${atMost(about)}, and ${amount(past, unit)} is needed to come within ${bandOf(about)}.` : "Relay: no joint lies ahead that could take it.",
    ahead.before ? `Lift the liner and lay it again from ${ahead.before}, or the last checkpoint before it that held.` : "Lift the liner and lay it again from the starting corner.",
  ];
}

function measure(about) {
  const here = about.need.isRightHere ? `within ${bandOf(about)} here` : `past ${bandOf(about)} here`;
  return [`Take the bed's temperature and check again before you lay on or change a joint. It is ${here}, but`, `${coming(about)}, more than can be met unseen.`];
}

function atMost({ ahead, need, unit }) {
  const joints = ahead.joints > 1 ? `${ahead.joints} joints` : "one joint";
  return `${joints} up to ${ahead.line} can give ${amount(mostGiven(need, ahead, TICKS[unit]), unit)} together`;
}

function reachable({ ahead, need, point, degree }) {
  const [rate, reference, count] = [ahead.grows_per_degree, point.reference_temperature, ahead.joints];
  const low = -need.band - count * ahead.stretch - need.error;
  const high = need.band + count * ahead.squeeze - need.error;
  return `at ${degrees(reference + low / rate, reference + high / rate, degree)}`;
}
