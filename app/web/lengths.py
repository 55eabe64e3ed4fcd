"""How a length is understood while it is typed: the number, and the words that say it back."""

from typing import Annotated, Literal

from fastapi import APIRouter, Query
from starlette.responses import JSONResponse

from app.lengths import LengthError, format_length, parse

router = APIRouter(prefix="/lengths", include_in_schema=False)

Typed = Annotated[str, Query(max_length=60)]


@router.get("")
def understood(text: Typed, unit: Literal["in", "ft", "mm", "cm", "m"] = "in") -> JSONResponse:
    """Inches and words; what is no length, as a half typed one, gets what was found and what was expected."""
    try:
        length = parse(text.strip(), unit)
    except LengthError as error:
        told = f"Found {error.found}, expected {error.expected}, for example {error.example}"
        return JSONResponse({"fault": told})
    return JSONResponse({"inches": length.inches, "words": format_length(length, unit)})
