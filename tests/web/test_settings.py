"""Where the server may listen."""

from pathlib import Path

import pytest

from app.main import create_app
from app.settings import AddressRefused, Settings


@pytest.mark.parametrize("host", ["127.0.0.1", "127.8.8.8", "localhost", "::1"])
def test_this_machine_only(host: str) -> None:
    assert Settings(Path("data"), host=host).checked()


@pytest.mark.parametrize("host", ["0.0.0.0", "192.168.1.5", "::", "example.org", ""])
def test_an_address_that_others_reach_is_refused_without_a_name(host: str) -> None:
    with pytest.raises(AddressRefused, match="expected --name NAME with it"):
        create_app(Settings(Path("data"), host=host))


def test_an_ipv6_address_is_written_in_brackets() -> None:
    assert Settings(Path("data"), host="::1", port=8350).address == "http://[::1]:8350/"


@pytest.mark.anyio
async def test_a_data_folder_that_is_not_there_is_made(tmp_path: Path) -> None:
    settings = Settings(tmp_path / "some" / "where")
    made = create_app(settings)
    async with made.router.lifespan_context(made):
        assert settings.database.exists()
