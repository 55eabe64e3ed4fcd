"""Cells of a list for a spreadsheet: text that a spreadsheet would take for a formula is guarded, and read back."""

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
"""First characters that make a spreadsheet compute a cell: OWASP, CSV Injection."""

GUARD = "'"


def guarded(text: str) -> str:
    """Text that stays text: `=1+1` becomes `'=1+1`; one that already begins with the guard gets another."""
    return f"{GUARD}{text}" if text.startswith((*FORMULA_STARTS, GUARD)) else text


def unguarded(cell: str) -> str:
    """What `guarded` was given: `'-1'-6"` is `-1'-6"` again."""
    return cell[1:] if cell.startswith(GUARD) else cell
