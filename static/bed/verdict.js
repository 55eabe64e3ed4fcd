// The verdict on a reading, on the tablet and without signal: the same arithmetic as on the server, and in the same words;
// a test holds the two against each other. Lengths in inches, temperatures in the project's unit.

import { even } from "./lengths.js";
import { instruction, told } from "./verdict_words.js";

const TOLERANCE = 1e-6;
export const TICKS = { in: 1 / 64, mm: 0.25 / 25.4 };
export const SETTABLE = 1 / 64;
const STEEL_PER_F = 6.45e-6;
const STEEL_STANDARD_F = 68;

// `reading`: {value, bed, tape}, the last two null where nobody took them; `point`: a checkpoint as it was released.
export function judge(reading, point, unit, degree) {
  const real = trueValue(reading, degree);
  const need = { error: real - point.nominal, band: point.band, ...coming(reading, point) };
  need.arriving = need.error + need.coming;
  need.isRightHere = Math.abs(need.error) <= need.band + TOLERANCE;
  need.least = Math.abs(need.arriving) + need.doubt - need.band;
  need.isWithin = need.isRightHere && Math.abs(need.arriving) + need.doubt <= need.band + TOLERANCE;
  const ahead = point.ahead;
  const [kind, spread] = decided(need, ahead, TICKS[unit]);
  const degrees = reading.bed === null ? null : reading.bed - point.reference_temperature;
  const explained = degrees === null ? null : point.grows_per_degree * degrees;
  const about = { point, ahead, need, bed: reading.bed, explained, unit, degree };
  return { kind, error: need.error, spread, said: told(about, reading.value, real, reading.tape), instruction: instruction(about, kind, spread) };
}

function trueValue({ value, tape }, degree) {
  if (tape === null) return value;
  const fahrenheit = degree === "C" ? tape * 1.8 + 32 : tape;
  return value * (1 + STEEL_PER_F * (fahrenheit - STEEL_STANDARD_F));
}

function coming(reading, point) {
  const rate = point.ahead.grows_per_degree;
  if (reading.bed === null) {
    const middle = (point.bed_low + point.bed_high) / 2 - point.reference_temperature;
    return { coming: rate * middle, doubt: Math.abs((rate * (point.bed_high - point.bed_low)) / 2) };
  }
  return { coming: rate * (reading.bed - point.reference_temperature), doubt: 0 };
}

function decided(need, ahead, tick) {
  if (need.isWithin) return ["hold", null];
  const spread = spreadOver(need, ahead, tick);
  if (!spread) {
    const isHopeless = need.least - 2 * need.doubt > mostGiven(need, ahead, tick) + TOLERANCE;
    return [isHopeless || !need.doubt ? "relay" : "measure", null];
  }
  return spread.ticks ? ["adjust", spread] : ["hold", null];
}

function spreadOver(need, ahead, tick) {
  const [away, most] = [Math.abs(need.arriving), mostGiven(need, ahead, tick)];
  if (need.least > most + TOLERANCE || need.doubt > need.band + TOLERANCE) return null;
  if (need.least <= TOLERANCE && Math.min(away, most) < SETTABLE / 2) return { joints: 0, ticks: 0, tick, total: 0 };
  const wanted = Math.max(even(away / tick), Math.ceil((need.least - TOLERANCE) / tick), 1);
  const count = Math.min(wanted, even(most / tick));
  const ticks = need.arriving < 0 ? -count : count;
  return { joints: jointsFor(need, ahead, count), ticks, tick, total: ticks * tick };
}

export function mostGiven(need, ahead, tick) {
  const each = need.arriving > 0 ? ahead.squeeze : ahead.stretch;
  return ahead.joints * Math.floor((each + TOLERANCE) / tick) * tick;
}

function jointsFor(need, ahead, ticks) {
  const share = need.coming ? 1 - need.band / (2 * Math.abs(need.coming)) : 0;
  return Math.min(ahead.joints, Math.max(ticks, Math.ceil(ahead.joints * share)));
}
