"""What goes wrong on a page without a person seeing it; any of it fails the test."""

from dataclasses import dataclass, field

from playwright.sync_api import ConsoleMessage, Error, Page

LISTEN = """
addEventListener("securitypolicyviolation", (event) => {
  console.error(`policy violation: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
});
const htmxErrors = ["htmx:responseError", "htmx:swapError", "htmx:sendError", "htmx:targetError",
  "htmx:oobErrorNoTarget", "htmx:timeout", "htmx:onLoadError", "htmx:invalidPath", "htmx:evalDisallowedError"];
for (const name of htmxErrors) {
  addEventListener(name, (event) => console.error(`${name}: ${event.detail?.error ?? ""} ${event.target?.id ?? ""}`));
}
"""


@dataclass
class Troubles:
    """Console errors, page errors, policy violations and htmx error events, in order."""

    found: list[str] = field(default_factory=list)
    expected: list[str] = field(default_factory=list)

    def watch(self, page: Page) -> None:
        page.add_init_script(LISTEN)
        page.on("console", self._on_console)
        page.on("pageerror", self._on_error)

    def expect(self, words: str) -> None:
        """Names a trouble that this test brings about on purpose."""
        self.expected.append(words)

    def unexpected(self) -> list[str]:
        return [line for line in self.found if not any(words in line for words in self.expected)]

    def _on_console(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning"):
            self.found.append(f"{message.type}: {message.text} ({message.location.get('url', '')})")

    def _on_error(self, error: Error) -> None:
        self.found.append(f"uncaught: {error}")
