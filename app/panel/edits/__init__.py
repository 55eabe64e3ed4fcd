"""Every edit by name; a file in this folder with `EDIT` adds to them."""

from collections.abc import Collection, Mapping
from importlib import import_module
from pkgutil import iter_modules

from app.panel.edit import Edit
from app.panel.faults import Fault, Refused
from app.panel.form import Form
from app.panel.size import BrickSize
from app.panel.wording import one_of, quoted


def _found() -> dict[str, type[Edit]]:
    names = sorted(entry.name for entry in iter_modules(__path__))
    edits: list[type[Edit]] = [import_module(f"{__name__}.{name}").EDIT for name in names]
    return {edit.name: edit for edit in edits}


EDITS = _found()


def edit_from(
    name: str,
    values: Mapping[str, str],
    unit: str,
    sizes: Mapping[str, BrickSize] | None = None,
    bonds: Collection[str] | None = None,
) -> Edit:
    """The edit called `name` with the fields of a form as typed; lengths without a mark are in `unit`.

    Each edit's file names its fields; other fields are left alone. Raises Refused with every fault, the field's name
    as path ("edit" for an unknown edit). `sizes` and `bonds` are those that are known; None leaves names unchecked.
    """
    if name not in EDITS:
        raise Refused([Fault("edit", quoted(name), one_of(EDITS, name))])
    form = Form(values, unit, sizes, bonds)
    edit = EDITS[name].read(form)
    form.finish()
    return edit
