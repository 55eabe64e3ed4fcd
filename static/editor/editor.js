// The panel editor: wires the drawing, the card and the bottom line. The server holds the drawing.

import { Advising } from "./advice.js";
import { watchBonds } from "./bonds.js";
import { CardFollower } from "./card.js";
import { take, takeChanged } from "./changed.js";
import { watchColours } from "./colours.js";
import { watchDrawer } from "./drawer.js";
import { Dimensions } from "./dimensions.js";
import { watchDraws } from "./draws.js";
import { watchEnds } from "./ends.js";
import { Frame } from "./frame.js";
import { Gestures } from "./gestures.js";
import { Ghosts } from "./ghosts.js";
import { Kept } from "./kept.js";
import { Keys } from "./keys.js";
import { Live } from "./live.js";
import { watchLog } from "./log.js";
import { watchNext } from "./next.js";
import { Places } from "./places.js";
import { Say } from "./say.js";
import { Snap } from "./snap.js";
import { Table } from "./table.js";
import { Things } from "./things.js";
import { Together } from "./together.js";
import { Typing } from "./typing.js";
import { View } from "./view.js";
import { Writes } from "./writes.js";

const editor = document.getElementById("editor");
const svg = document.getElementById("drawing");
const frame = new Frame(svg);
const say = new Say(svg, document.getElementById("pointer"));
const writes = new Writes(editor);
const things = new Things(editor, svg, document.getElementById("live"));
const snap = new Snap(svg, frame, editor.dataset.snap);
const ghosts = new Ghosts(frame);
const gestures = new Gestures({ svg, frame, things, writes, snap, say, ghosts });
new View(svg, frame, gestures);
new Typing(svg, gestures);
const card = new CardFollower(svg, things);
writes.card = card;
const places = new Places(svg, frame);
const advising = new Advising(editor, svg);
new Live(editor, svg, writes);
watchBonds();
watchLog(editor);
watchNext();
const kept = new Kept();
takeChanged(kept);
watchEnds();
watchDrawer(editor);
watchColours(editor);
watchDraws(svg, gestures);
const dimensions = new Dimensions(svg, frame, things, writes, say);
const table = new Table(editor, things, say);
new Keys(svg, { frame, things, gestures, places, say, snap, table, card, dimensions, writes });

// The server's answer is in: new lines to snap to, marks and handles again, a changed size of the drawing.
document.addEventListener("htmx:afterRequest", (event) => {
  if (event.detail.successful && event.detail.requestConfig.verb === "post") settle();
});

new Together(editor, gestures, writes, (text) => {
  kept.remember();
  take(text, document.createElement("div"), kept);
  settle();
});

// Findings follow once an edit is painted; a pressed one may be gone.
document.addEventListener("htmx:oobAfterSwap", (event) => {
  if (event.detail.target?.id === "findings") places.refresh();
});

function settle() {
  snap.read();
  things.refresh();
  const home = JSON.parse(svg.querySelector("#layer-things").dataset.home);
  frame.resize(home.height_in, home.box);
  svg.dataset.height = home.height_in;
  places.refresh();
  advising.refresh();
  card.soon(writes.isFromCard);
  document.dispatchEvent(new CustomEvent("editor:settled"));
}

document.addEventListener("click", (event) => {
  const fit = event.target.closest("[data-fit]");
  if (fit) frame.fit();
  const all = event.target.closest("[data-all]");
  if (all) writes.look(() => htmx.ajax("GET", all.dataset.all, { target: "#findings", swap: "innerHTML show:none" }));
});

document.addEventListener("change", (event) => {
  const layer = event.target.closest("[data-layer]");
  if (!layer) return;
  svg.classList.toggle(`without-${layer.dataset.layer}`, !layer.checked);
  if (layer.checked && layer.dataset.late) {
    const address = `${editor.dataset.layers}?choice=${layer.dataset.layer}`;
    writes.look(() => htmx.ajax("GET", address, { target: "#notice", swap: "none" }).catch(() => layer.click()));
  }
});

frame.fit();
