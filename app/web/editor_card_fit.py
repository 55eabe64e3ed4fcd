"""Forms of the panel's fit and of its place in the wall."""

from app.brickwork.wall import is_continuous
from app.panel.check_fit import MATTERS, WORDS
from app.panel.edits import edit_from
from app.panel.project import Wall
from app.panel.values import Panel
from app.web.editor_cards import CardForm, choice_field, tick_field

KINDS = {
    "heads": "Heads",
    "sills": "Sills",
    "jambs": "Jambs",
    "edges": "Edges",
    "strips": "Strips",
    "zones": "Zones",
}
DEGREES = tuple((word, word) for word in WORDS)


def fit_form(panel: Panel) -> CardForm:
    """Which joints may give, whether closers end a course, and what brick has to meet."""
    fit = panel.fit
    given = (
        tick_field("courses", "Bed joints give, so that courses meet heads and sills", fit.courses),
        tick_field("heads", "Head joints give, so that bricks meet jambs and edges", fit.heads),
        tick_field("closers", "Closers end a course instead of a small piece", fit.closers),
    )
    matter = tuple(
        choice_field(f"matter_{kind}", KINDS[kind], getattr(fit.matter, kind), DEGREES, wide=False) for kind in MATTERS
    )
    words = "Joints change, bricks never. Required goes before wanted; what is free is met only by chance."
    return CardForm("set_fit", "Set fit", (*given, *matter), words=words)


def wall_form(wall: Wall, panel: Panel, unit: str) -> CardForm:
    """Whether courses and bond run on from the neighbours, and the way out of it or back."""
    if is_continuous(panel):
        words = f"{panel.mark} is joined to wall {wall.mark}: its courses and bond run on from the panels beside it."
        act = "Release it from the wall"
        return CardForm("release_panel", act, words=words, why_not=_why_not("release_panel", panel, unit))
    if panel.released:
        words = f"{panel.mark} is released from wall {wall.mark}: its courses and bond start on their own."
    else:
        words = f"{panel.mark} does not run on from wall {wall.mark}: its bond has a typed start."
    return CardForm("join_wall", "Join it to the wall", words=words, why_not=_why_not("join_wall", panel, unit))


def _why_not(edit: str, panel: Panel, unit: str) -> str | None:
    return edit_from(edit, {}, unit).why_not(panel, unit)
