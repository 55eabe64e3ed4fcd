"""Say what may give and what matters. Fields: courses, heads, closers (yes or no; blank: no), matter_heads,
matter_sills, matter_jambs, matter_edges, matter_strips, matter_zones (required, wanted or free; blank: as it is)."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from app.panel.check_fit import MATTERS, WORDS
from app.panel.edit import Edit
from app.panel.form import Form
from app.panel.values import Fit, Panel

FLAGS = {"courses": "bed joints", "heads": "head joints", "closers": "closers"}


@dataclass(frozen=True, slots=True)
class SetFit(Edit):
    """`matter` holds pairs of a kind of control line and a word; kinds that are left out stay as they are."""

    name: ClassVar[str] = "set_fit"
    courses: bool = False
    heads: bool = False
    closers: bool = False
    matter: tuple[tuple[str, str], ...] = ()

    @classmethod
    def read(cls, form: Form) -> Self:
        typed = [kind for kind in MATTERS if form.has(f"matter_{kind}")]
        matter = tuple((kind, form.choice(f"matter_{kind}", WORDS)) for kind in typed)
        return cls(form.flag("courses"), form.flag("heads"), form.flag("closers"), matter)

    def label(self, panel: Panel, _unit: str = "in", /) -> str:
        old, new = panel.fit, self._fit(panel)
        given = [
            f"{words} {'on' if getattr(new, flag) else 'off'}"
            for flag, words in FLAGS.items()
            if getattr(new, flag) != getattr(old, flag)
        ]
        words = {kind: getattr(new.matter, kind) for kind in MATTERS}
        given += [f"{kind} {word}" for kind, word in words.items() if word != getattr(old.matter, kind)]
        return f"Set fit: {', '.join(given) or 'as it is'}"

    def changed(self, panel: Panel) -> Panel:
        return replace(panel, fit=self._fit(panel))

    def _fit(self, panel: Panel) -> Fit:
        return Fit(self.courses, self.heads, self.closers, replace(panel.fit.matter, **dict(self.matter)))


EDIT = SetFit
