// Take to the bed: this release kept on the tablet, so that it opens with no signal; the screen stays awake; white on black.

import { isPersistent } from "./outbox.js";

export function watchTake(data) {
  const words = document.getElementById("take-words");
  const button = document.getElementById("take");
  const tell = (text) => (words.textContent = text);
  button.addEventListener("click", () => take(data, tell));
  document.addEventListener("bed:take", () => take(data, tell).then((isTaken) => isTaken && location.replace(`/bed/${data.panel}`)));
  if (!navigator.serviceWorker) tell("This browser cannot keep the page: it needs a signal to open.");
  else navigator.serviceWorker.register("/bed/worker.js", { scope: "/bed" }).then(() => isTaken(data).then((held) => held && tell(kept(data))), () => tell("This page could not be kept."));
  watchReverse();
  stayAwake();
}

const kept = (data) => `Rev ${data.release.rev} is on this tablet: it opens with no signal.`;

async function isTaken(data) {
  const held = await caches.match(`/bed/${data.panel}`);
  return Boolean(held && (await held.text()).includes(data.release.digest));
}

// The page, the list, and every script, style and font that they call for; the newest release as it is now.
async function take(data, tell) {
  try {
    await navigator.serviceWorker.ready;
    const cache = await caches.open("bed-pages");
    const page = await fetch(`/bed/${data.panel}?fresh=1`, { cache: "reload", redirect: "manual" });
    if (page.status !== 200 || !(page.headers.get("content-type") ?? "").startsWith("text/html")) throw new Error("page");
    const text = await page.clone().text();
    await (await caches.open("bed-files")).addAll(wanted(text));
    await cache.put(`/bed/${data.panel}`, page);
    const list = await fetch("/bed?fresh=1", { cache: "reload" });
    if (list.status === 200 && !list.redirected) await cache.put("/bed", list);
  } catch {
    tell("Not taken: there is no signal, or the server did not answer. Try again.");
    return false;
  }
  const isKept = await isPersistent();
  tell(`${kept(data)}${isKept ? "" : " The browser does not promise to keep it when the tablet is full."}`);
  return true;
}

function wanted(text) {
  const page = new DOMParser().parseFromString(text, "text/html");
  const files = [...page.querySelectorAll("script[src], link[rel=stylesheet], link[rel=icon], link[rel=manifest]")].map((element) => element.getAttribute("src") ?? element.getAttribute("href"));
  const loaded = performance.getEntriesByType("resource").map((entry) => new URL(entry.name).pathname).filter((path) => path.startsWith("/static/"));
  return [...new Set([...files, ...loaded])];
}

function watchReverse() {
  const button = document.getElementById("reverse");
  const set = (isReverse) => {
    document.body.classList.toggle("reverse", isReverse);
    button.setAttribute("aria-pressed", String(isReverse));
  };
  try {
    set(localStorage.getItem("bed-reverse") === "yes");
  } catch {
    set(false);
  }
  button.addEventListener("click", () => {
    set(!document.body.classList.contains("reverse"));
    try {
      localStorage.setItem("bed-reverse", document.body.classList.contains("reverse") ? "yes" : "no");
    } catch {
      // Asked for again after the next start.
    }
  });
}

function stayAwake() {
  const ask = () => document.hidden || navigator.wakeLock?.request("screen").catch(() => {});
  document.addEventListener("visibilitychange", ask);
  ask();
}
