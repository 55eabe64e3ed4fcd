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
    """`data` is the folder of the database; `largest_body` is in bytes.

    `names` are what browsers on other machines may call the server by; `sign_in` asks for accounts on this machine too.
    """

    data: Path
    host: str = "127.0.0.1"
    port: int = 8350
    largest_body: int = 20_000_000
    names: tuple[str, ...] = ()
    sign_in: bool = False

    @property
    def database(self) -> Path:
        return self.data / "castcourse.sqlite3"

    @property
    def address(self) -> str:
        host = f"[{self.host}]" if ":" in self.host else self.host
        return f"http://{host}:{self.port}/"

    @property
    def needs_sign_in(self) -> bool:
        """Whoever reaches more than this machine asks who is there."""
        return self.sign_in or not is_loopback(self.host)

    @property
    def known_hosts(self) -> frozenset[str]:
        """Names that requests may come under, in lower case."""
        if is_loopback(self.host):
            return LOOPBACK_HOSTS
        return frozenset(name.lower() for name in (*self.names, self.host))

    def checked(self) -> "Settings":
        """The same settings; raises AddressRefused for an address that other machines reach under no known name."""
        if not is_loopback(self.host) and not self.names:
            raise AddressRefused(
                f"host: found {self.host} without a name, expected --name NAME with it, the name by which browsers on"
                " other machines call this server"
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
