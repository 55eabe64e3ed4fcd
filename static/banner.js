// Says in words that an answer did not come, or was not one that a page can use.
const banner = document.getElementById("banner");

function tell(words) {
  banner.textContent = words;
  banner.hidden = false;
}

function what(event) {
  return event.detail.requestConfig?.verb === "get" ? "Not shown" : "Not saved";
}

document.addEventListener("htmx:responseError", (event) => {
  tell(`${what(event)}. The server answered ${event.detail.xhr.status}. Load the page again to see what is saved.`);
});
document.addEventListener("htmx:sendError", (event) => tell(`${what(event)}. The server did not answer; check that it runs.`));
document.addEventListener("htmx:timeout", (event) => tell(`${what(event)}. The server did not answer in 15 seconds.`));
document.addEventListener("htmx:afterSwap", () => { banner.hidden = true; });
