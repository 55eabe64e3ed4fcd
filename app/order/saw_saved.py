"""What cutting up bricks for several panels together saves."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Saved:
    """Bricks to cut up for some panels: cut together, and each panel by itself."""

    together: int
    alone: int

    @property
    def words(self) -> str:
        """What cutting together saves, with both numbers; "" for nothing."""
        less = self.alone - self.together
        if less <= 0:
            return ""
        fewer = f"{less:,} {'brick' if less == 1 else 'bricks'} fewer than panel by panel"
        return f"Cut together, {self.together:,} bricks are cut up: {fewer}, which takes {self.alone:,}."
