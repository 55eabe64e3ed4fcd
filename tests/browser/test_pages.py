"""Every page, at the sizes people use: nothing runs off the side, and axe finds nothing."""

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

SIZES = ((1440, 900), (1180, 820), (820, 1180), (390, 800))


def test_projects_page(page: Page, axe) -> None:
    for width, height in SIZES:
        page.set_viewport_size({"width": width, "height": height})
        page.goto("/")
        expect(page.get_by_role("heading", level=1)).to_have_text("Projects")
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        assert axe(page) == []
