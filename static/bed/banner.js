// What must be seen at once: a newer release, a hold, what is not at the office yet, a link that was closed.

export function watchBanner(work, outbox) {
  const out = document.getElementById("outbox");
  let unsent = 0;
  const box = document.createElement("div");
  box.className = "bed-say news";
  box.setAttribute("role", "alert");
  box.hidden = true;
  document.getElementById("bed-banner").after(box);

  document.addEventListener("outbox:changed", ({ detail }) => {
    const { here, attention, photos, closed } = detail;
    unsent = here + photos;
    out.dataset.state = attention ? "attention" : here || photos ? "here" : "sent";
    out.textContent = [
      here ? `■ ${here} on this tablet, not sent` : "✓ All sent",
      photos && `${photos} ${photos === 1 ? "photo" : "photos"} to send`,
      attention && `◆ ${attention} ${attention === 1 ? "needs" : "need"} attention`,
      closed && `link closed: ${closed} Records stay here.`,
    ].filter(Boolean).join(" · ");
    document.getElementById("as-file").hidden = !(here || attention);
    const leave = document.querySelector("#leave button");
    if (leave) leave.disabled = here + photos > 0;
  });

  document.addEventListener("work:changed", () => {
    const { newest, hold, data } = work;
    const isNewer = newest && newest.number > data.release.number;
    box.hidden = !isNewer && !hold;
    if (box.hidden) return;
    const words = document.createElement("p");
    words.textContent = [hold && `ON HOLD: ${hold}`, isNewer && `Rev ${newest.rev} is released; this page shows rev ${data.release.rev}.`, isNewer && unsent > 0 && "It can be taken once all is sent."].filter(Boolean).join(" ");
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = `Take rev ${newest?.rev}`;
    button.hidden = !isNewer;
    // What was recorded by the old release goes first.
    button.disabled = unsent > 0;
    button.addEventListener("click", () => document.dispatchEvent(new CustomEvent("bed:take")));
    box.replaceChildren(words, button);
  });

  document.getElementById("as-file").addEventListener("click", async () => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(await outbox.asFile());
    link.download = `records ${work.data.mark}.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  });
}
