// What is on this tablet, in the browser's own database: records, photos, which device this is. A record counts as recorded
// only once its transaction is complete on disk.

const NAME = "castcourse-bed";
const VERSION = 1;
const STRICT = { durability: "strict" };
const RELAXED = { durability: "relaxed" };

let opening = null;

// A later version of the page may have given the database another form; what this one needs is in that too.
function opened() {
  opening ??= lineOf(VERSION)
    .catch((error) => (error?.name === "VersionError" ? lineOf() : Promise.reject(error)))
    .catch((error) => {
      opening = null;
      throw error;
    });
  return opening;
}

function lineOf(version) {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(NAME, version);
    asked.onupgradeneeded = () => {
      const records = asked.result.createObjectStore("records", { keyPath: "id" });
      records.createIndex("state", "state");
      records.createIndex("panel", "panel");
      asked.result.createObjectStore("photos", { keyPath: "id" });
      asked.result.createObjectStore("device", { keyPath: "key" });
    };
    asked.onsuccess = () => {
      asked.result.onclose = asked.result.onversionchange = () => {
        asked.result.close();
        opening = null;
      };
      resolve(asked.result);
    };
    asked.onerror = () => reject(asked.error);
    asked.onblocked = () => reject(new Error("blocked"));
  });
}

// One transaction: what `work` returns once it is complete. A line that was closed under it is opened once more.
async function run(names, mode, work, how = STRICT, isAgain = false) {
  const line = await opened();
  let transaction;
  try {
    transaction = line.transaction(names, mode, how);
  } catch (error) {
    if (isAgain || error.name !== "InvalidStateError") throw error;
    opening = null;
    return run(names, mode, work, how, true);
  }
  return new Promise((resolve, reject) => {
    let result;
    transaction.oncomplete = () => resolve(result?.value);
    transaction.onerror = transaction.onabort = () => reject(transaction.error ?? new Error("closed"));
    result = work(transaction);
  });
}

function asking(request, found = (value) => value) {
  const holder = {};
  request.onsuccess = () => (holder.value = found(request.result));
  return holder;
}

// A record with the next number of this device, and its photo; resolves when both are on disk.
export function add(made, photo) {
  return run(["records", "photos", "device"], "readwrite", (transaction) => {
    const holder = {};
    const device = transaction.objectStore("device");
    device.get("self").onsuccess = ({ target }) => {
      const self = target.result ?? { key: "self", id: crypto.randomUUID?.() ?? randomId(), sequence: 0 };
      self.sequence += 1;
      device.put(self);
      holder.value = { ...made, device: self.id, sequence: self.sequence, state: "here", photo: Boolean(photo) };
      transaction.objectStore("records").add(holder.value);
      if (photo) transaction.objectStore("photos").add({ id: made.id, photo });
    };
    return holder;
  });
}

export function randomId() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

// Changes what is known about a record, never the record; resolves when it is on disk.
export function note(id, changes) {
  return run(["records"], "readwrite", (transaction) => {
    const records = transaction.objectStore("records");
    records.get(id).onsuccess = ({ target }) => target.result && records.put({ ...target.result, ...changes });
  });
}

const inOrder = (found) => found.sort((one, other) => one.sequence - other.sequence);

export const inState = (state) => run(["records"], "readonly", (t) => asking(t.objectStore("records").index("state").getAll(state), inOrder));
export const ofPanel = (panel) => run(["records"], "readonly", (t) => asking(t.objectStore("records").index("panel").getAll(panel), inOrder));
export const every = () => run(["records"], "readonly", (t) => asking(t.objectStore("records").getAll(), inOrder));
export const photoOf = (id) => run(["photos"], "readonly", (t) => asking(t.objectStore("photos").get(id), (found) => found?.photo));

// Why nothing can be recorded here, "" when it can: asked before anything is taken in.
export async function whyNot() {
  if (!globalThis.indexedDB) return "This browser keeps nothing: no record can be taken here.";
  try {
    await run(["device"], "readwrite", (transaction) => transaction.objectStore("device").put({ key: "probe", filled: "x".repeat(20_000) }), RELAXED);
    await run(["device"], "readwrite", (transaction) => transaction.objectStore("device").delete("probe"), RELAXED);
  } catch (error) {
    return error?.name === "QuotaExceededError" ? "This tablet is full: make room before recording." : "This tablet cannot keep records just now; load the page again.";
  }
  return "";
}

// Whether the browser promised not to clear this by itself.
export async function isPersistent() {
  return Boolean(await navigator.storage?.persisted?.()) || Boolean(await navigator.storage?.persist?.().catch(() => false));
}
