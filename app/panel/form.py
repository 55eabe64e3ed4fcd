"""A form's fields as values: texts in, lengths, points and names out, every fault noted beside its field."""

from collections.abc import Collection, Mapping

from app.lengths import Length, LengthError, parse
from app.panel.check_marks import text_faults
from app.panel.faults import Fault, Refused
from app.panel.shapes import Point
from app.panel.size import BrickSize
from app.panel.wording import one_of, quoted

EXAMPLE = "12'-6 3/8\" or 3810 mm"
YES, NO = ("yes", "on", "true"), ("no", "off", "false")
"""As typed, as a browser sends a ticked box, and as a script writes them."""

LONGEST_LIST = 1000
"""More points than anybody types; keeps a pasted file from becoming an outline."""


class Form:
    """Fields by name, as typed, lengths without a mark in `unit`.

    Reading goes on past a fault, so that a form shows all of them; `finish` raises. `sizes` and `bonds` are the names
    that are known, None leaves names unchecked.
    """

    def __init__(
        self,
        values: Mapping[str, str],
        unit: str,
        sizes: Mapping[str, BrickSize] | None = None,
        bonds: Collection[str] | None = None,
    ) -> None:
        self.values, self.unit, self.sizes, self.bonds = values, unit, sizes, bonds
        self.faults: list[Fault] = []

    def finish(self) -> None:
        """Raises Refused with every fault noted, each with its field's name as path; nothing when there is none."""
        if self.faults:
            raise Refused(self.faults)

    def has(self, name: str) -> bool:
        """Whether anything is typed in the field."""
        return bool(self.values.get(name, "").strip())

    def text(self, name: str, expected: str) -> str:
        """The text of a field that must not be blank."""
        if not self.has(name):
            self.faults.append(Fault(name, "nothing", expected))
        return self.optional_text(name) or ""

    def optional_text(self, name: str) -> str | None:
        """The text of a field, None when it is blank."""
        return self.values.get(name, "").strip() or None

    def line(self, name: str, expected: str, longest: int) -> str:
        """The text of a field that must be there, print, and have at most `longest` characters."""
        text = self.optional_text(name) or ""
        self.faults += text_faults(text, name, expected, longest)
        return text

    def texts(self, name: str, expected: str) -> tuple[str, ...]:
        """The texts of a field with commas between, each once, as first found; there must be one."""
        found = tuple(dict.fromkeys(text.strip() for text in self.values.get(name, "").split(",") if text.strip()))
        if not 0 < len(found) <= LONGEST_LIST:
            said = f"{len(found):,} of them" if found else "nothing"
            self.faults.append(Fault(name, said, f"{expected}, at most {LONGEST_LIST}"))
        return found

    def flag(self, name: str) -> bool:
        """Whether a box is ticked: yes or no, no when it is blank."""
        said = (self.optional_text(name) or "no").casefold()
        if said not in YES and said not in NO:
            self.faults.append(Fault(name, quoted(said), "yes or no"))
        return said in YES

    def length(self, name: str) -> Length:
        """The length in a field, its text kept."""
        if self.has(name):
            return self._length(self.values[name].strip(), name, "")
        self.faults.append(Fault(name, "nothing", f"a length, for example {EXAMPLE}"))
        return Length(0)

    def optional_length(self, name: str) -> Length | None:
        """The length in a field, None when it is blank."""
        return self.length(name) if self.has(name) else None

    def optional_point(self, across: str, up: str) -> Point | None:
        """The point in two fields, None when both are blank."""
        return (self.length(across), self.length(up)) if self.has(across) or self.has(up) else None

    def number(self, name: str) -> int:
        """The whole number in a field."""
        text = self.values.get(name, "").strip()
        digits = text.removeprefix("-")
        if digits.isascii() and digits.isdigit() and len(digits) <= 9:
            return int(text)
        self.faults.append(Fault(name, quoted(text), "a whole number"))
        return 0

    def choice(self, name: str, known: Collection[str] | None) -> str:
        """One of the known names; any name when None are given."""
        text = self.optional_text(name) or ""
        if not text or (known is not None and text not in known):
            self.faults.append(Fault(name, quoted(text), one_of(known, text) if known is not None else "a name"))
        return text

    def points(self, name: str) -> tuple[Point, ...]:
        """The points in a field, `x, y; x, y`; a line break parts points as well."""
        typed = [pair for pair in self.values.get(name, "").replace("\n", ";").split(";") if pair.strip()]
        if not 0 < len(typed) <= LONGEST_LIST:
            expected = f"points as x, y; x, y, at most {LONGEST_LIST}"
            self.faults.append(Fault(name, f"{len(typed)} points" if typed else "nothing", expected))
            return ()
        return tuple(self._point(pair, name, k) for k, pair in enumerate(typed))

    def _point(self, pair: str, name: str, k: int) -> Point:
        parts = [part.strip() for part in pair.split(",")]
        if len(parts) != 2:
            self.faults.append(Fault(name, f"point {k}: {quoted(pair.strip())}", "two lengths with a comma between"))
            return Length(0), Length(0)
        return self._length(parts[0], name, f"point {k}: "), self._length(parts[1], name, f"point {k}: ")

    def _length(self, text: str, name: str, where: str) -> Length:
        try:
            return parse(text, self.unit)
        except LengthError as error:
            found = f"{where}{quoted(text)}, {error.found} at character {error.position + 1}"
            self.faults.append(Fault(name, found, f"{error.expected}, for example {error.example}"))
            return Length(0)
