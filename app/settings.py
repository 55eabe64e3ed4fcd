"""What the server is told at start; nothing else reads the environment."""

from dataclasses import dataclass
from ipaddress import ip_address
from pathlib import Path

LOOPBACK_HOSTS = frozenset({"127.0.0.1", "localhost", "[::1]", "test"})
"""Names a browser on this machine may call the server by; `test` never resolves on a network (RFC 6761)."""


class AddressRefused(ValueError):
    """An address on which the server may not listen."""


@dataclass(frozen=True, slots=True)
class Settings:
    """`data` is the folder of the database; `largest_body` is in bytes."""

    data: Path
    host: str = "127.0.0.1"
    port: int = 8350
    largest_body: int = 20_000_000

    @property
    def database(self) -> Path:
        return self.data / "castcourse.sqlite3"

    @property
    def address(self) -> str:
        host = f"[{self.host}]" if ":" in self.host else self.host
        return f"http://{host}:{self.port}/"

    def checked(self) -> "Settings":
        """The same settings; raises AddressRefused for an address that other machines can reach."""
        if not is_loopback(self.host):
            raise AddressRefused(
                f"host: found {self.host}, expected 127.0.0.1, localhost or ::1; there is no sign-in yet, "
                "so the server listens on this machine only"
            )
        return self


def is_loopback(host: str) -> bool:
    """Whether only this machine reaches `host`."""
    if host == "localhost":
        return True
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return False
