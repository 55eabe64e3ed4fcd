"""The colours that a job's brick is mixed from."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Colour:
    """One colour and its share of the bricks in percent."""

    name: str
    percent: float


@dataclass(frozen=True, slots=True)
class Blend:
    """Colours whose shares make 100 percent, none for brick of one colour.

    `cluster` is the most bricks of one colour that may stand together: bricks touch along a head or a bed joint.
    """

    colours: tuple[Colour, ...] = ()
    cluster: int = 4

    @property
    def shares(self) -> str:
        """The colours with their shares in words, `red 60, buff 40 percent`; "" for brick of one colour."""
        said = ", ".join(f"{colour.name} {colour.percent:g}" for colour in self.colours)
        return f"{said} percent" if said else ""
