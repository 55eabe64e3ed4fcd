// How far the work is, by the records: each device's in its own order, devices by arrival, never by a clock; what is on this
// tablet alone comes last. The server counts the same way.

const TARGETS = { sheet: "sheet", brick: "step", check: "item", strip: "step", sign: "role" };
const TAKES_BACK = { sheet: "lifted", brick: "open", check: "open", concrete: "open", strip: "open" };

export function inOrder(records) {
  const devices = new Map();
  for (const record of records) devices.set(record.device, [...(devices.get(record.device) ?? []), record]);
  const placed = [];
  for (const ours of devices.values()) {
    let latest = 0;
    for (const record of ours.sort((one, other) => one.sequence - other.sequence)) {
      latest = Math.max(latest, record.arrival ?? Infinity);
      placed.push([latest, record.sequence, record]);
    }
  }
  return placed.sort((one, other) => (one[0] === other[0] ? one[1] - other[1] : one[0] - other[0])).map(([, , record]) => record);
}

const takesBack = (record) => TAKES_BACK[record.kind] === record.body.state && Boolean(record.body.state);

export function fold(records) {
  const ordered = inOrder(records);
  const corrected = new Set(ordered.map((record) => record.corrects).filter(Boolean));
  const standing = ordered.filter((record) => !corrected.has(record.id));
  const state = { readings: new Map(), findings: [], concrete: null };
  for (const kind of Object.keys(TARGETS)) state[kind] = new Map();
  for (const record of standing) {
    const { kind, body } = record;
    if (kind in TARGETS) (takesBack(record) ? drop : put)(state[kind], body[TARGETS[kind]], record);
    if (kind === "concrete") state.concrete = takesBack(record) ? null : record;
    if (kind === "finding") state.findings.push(record);
    if (kind === "reading") put(state.readings, body.checkpoint, [...(state.readings.get(body.checkpoint) ?? []), record]);
  }
  return state;
}

const put = (map, key, record) => map.set(key, record);
const drop = (map, key) => map.delete(key);
