// SHA-256 (FIPS 180-4) in hexadecimal. The browser's own where it has one; on a plain http line of a site it has none.

const ROOTS = firstPrimes(64);
const K = ROOTS.map((prime) => fraction(Math.cbrt(prime)));
const START = ROOTS.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));

export async function sha256(bytes) {
  if (!globalThis.crypto?.subtle) return plainSha256(bytes);
  return hex(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)));
}

export function plainSha256(bytes) {
  const state = new Uint32Array(START);
  const blocks = padded(bytes);
  for (let at = 0; at < blocks.length; at += 16) compress(state, blocks.subarray(at, at + 16));
  return [...state].map((word) => word.toString(16).padStart(8, "0")).join("");
}

function firstPrimes(count) {
  const primes = [];
  for (let number = 2; primes.length < count; number += 1) if (primes.every((prime) => number % prime)) primes.push(number);
  return primes;
}

// The first 32 bits behind the point.
function fraction(number) {
  return Math.floor((number - Math.floor(number)) * 2 ** 32) >>> 0;
}

function padded(bytes) {
  const whole = Math.ceil((bytes.length + 9) / 64) * 64;
  const buffer = new Uint8Array(whole);
  buffer.set(bytes);
  buffer[bytes.length] = 0x80;
  const view = new DataView(buffer.buffer);
  view.setUint32(whole - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(whole - 4, (bytes.length * 8) >>> 0);
  return Uint32Array.from({ length: whole / 4 }, (_, k) => view.getUint32(k * 4));
}

const turn = (word, by) => (word >>> by) | (word << (32 - by));

function schedule(block) {
  const words = new Uint32Array(64);
  words.set(block);
  for (let k = 16; k < 64; k += 1) {
    const [late, early] = [words[k - 2], words[k - 15]];
    const one = turn(late, 17) ^ turn(late, 19) ^ (late >>> 10);
    const other = turn(early, 7) ^ turn(early, 18) ^ (early >>> 3);
    words[k] = one + words[k - 7] + other + words[k - 16];
  }
  return words;
}

function compress(state, block) {
  const words = schedule(block);
  let [a, b, c, d, e, f, g, h] = state;
  for (let k = 0; k < 64; k += 1) {
    const chosen = (e & f) ^ (~e & g);
    const first = (h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + chosen + K[k] + words[k]) >>> 0;
    const most = (a & b) ^ (a & c) ^ (b & c);
    const second = ((turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + most) >>> 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) >>> 0, c, b, a, (first + second) >>> 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, k) => (state[k] += word));
}

export function hex(bytes) {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
