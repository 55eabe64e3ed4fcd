"""A hand at the drawing: places of the face on the screen, mouse, fingers, and what the API has in the end."""

from collections.abc import Iterable
from typing import Any

import httpx
from playwright.sync_api import CDPSession, Page, expect

Place = tuple[float, float]

TO_SCREEN = """([x, y]) => {
  const svg = document.getElementById("drawing");
  const at = new DOMPoint(x, Number(svg.dataset.height) - y).matrixTransform(svg.getScreenCTM());
  return [at.x, at.y];
}"""


def screen(page: Page, x: float, y: float) -> Place:
    """Where a place of the face frame, in inches, is on the screen."""
    left, top = page.evaluate(TO_SCREEN, [x, y])
    return left, top


class Mouse:
    """Drags and presses at places of the face."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def move(self, x: float, y: float) -> None:
        self.page.mouse.move(*screen(self.page, x, y))

    def press(self, x: float, y: float) -> None:
        self.move(x, y)
        self.page.mouse.down()
        self.page.mouse.up()

    def hold(self, x: float, y: float, to_x: float, to_y: float) -> None:
        """Down at one place and over to another, not let go."""
        self.move(x, y)
        self.page.mouse.down()
        self.move((x + to_x) / 2, (y + to_y) / 2)
        self.move(to_x, to_y)

    def drag(self, x: float, y: float, to_x: float, to_y: float) -> None:
        self.hold(x, y, to_x, to_y)
        self.page.mouse.up()


class Fingers:
    """Touches, sent to the browser as a screen sends them."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.devtools: CDPSession = page.context.new_cdp_session(page)

    def touch(self, kind: str, places: Iterable[Place]) -> None:
        points = [{"x": x, "y": y, "id": k} for k, (x, y) in enumerate(places)]
        self.devtools.send("Input.dispatchTouchEvent", {"type": f"touch{kind}", "touchPoints": points})

    def tap(self, x: float, y: float) -> None:
        self.touch("Start", [screen(self.page, x, y)])
        self.touch("End", [])

    def drag(self, x: float, y: float, to_x: float, to_y: float) -> None:
        """Comes to rest before it lets go: the browser swallows a tap that follows a flick."""
        (left, top), (right, foot) = screen(self.page, x, y), screen(self.page, to_x, to_y)
        self.touch("Start", [(left, top)])
        for k in range(1, 5):
            self.touch("Move", [(left + (right - left) * k / 4, top + (foot - top) * k / 4)])
        self.page.wait_for_timeout(120)
        self.touch("Move", [(right, foot)])
        self.touch("End", [])


def panel_of(address: str, panel: str) -> dict[str, Any]:
    """The panel as the API gives it."""
    found: dict[str, Any] = httpx.get(f"{address}/api/panels/{panel}", timeout=30).json()["document"]
    return found


def saved(page: Page, revision: int) -> None:
    """Waits until the page shows this revision."""
    expect(page.locator("#revision")).to_have_attribute("data-revision", str(revision))


def typed(page: Page, *texts: str, commit: bool = True) -> None:
    """Lengths typed one after another while something is drawn or dragged."""
    for k, text in enumerate(texts):
        if k:
            page.keyboard.press("Tab")
        page.keyboard.type(text)
    if commit:
        page.keyboard.press("Enter")


def near(values: list[Any], expected: list[float], off: float) -> bool:
    """Whether numbers differ from what was expected by no more than `off`."""
    return all(abs(float(value) - meant) <= off for value, meant in zip(values, expected, strict=True))
