"""The one error of this room: a text or number that is not a length."""


class LengthError(ValueError):
    """What cannot be read as a length: the whole `text`, `position` (counted from 0) of what was `found`, what was
    `expected` there, and an `example` that is accepted.

    The message is one line and counts characters from 1, as people do.
    """

    def __init__(self, text: str, position: int, found: str, expected: str, example: str) -> None:
        super().__init__(text, position, found, expected, example)
        self.text = text
        self.position = position
        self.found = found
        self.expected = expected
        self.example = example

    def __str__(self) -> str:
        place = f"character {self.position + 1}: found {self._found()}"
        said = _on_one_line(self.text)
        start = f"{said}, " if said.strip() else ""
        return f"{start}{place}, expected {self.expected}, for example {self.example}"

    def _found(self) -> str:
        """Quoted when it is a piece of the text, plain when it is said in words (`nothing`, `the end`)."""
        is_piece = self.found and self.text.startswith(self.found, self.position)
        if not is_piece:
            return self.found
        mark = '"' if "'" in self.found else "'"
        return f"{mark}{_on_one_line(self.found)}{mark}"


def _on_one_line(text: str, most: int = 60) -> str:
    shown = text if len(text) <= most else text[: most - 1] + "…"
    return "".join(sign if sign.isprintable() else sign.encode("unicode_escape", "replace").decode() for sign in shown)
