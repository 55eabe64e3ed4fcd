"""What a page that is being made knows of who has signed in: the name, and what each of its forms must bring back."""

import re
from contextvars import ContextVar
from dataclasses import dataclass
from hashlib import sha256


@dataclass(frozen=True, slots=True)
class Visitor:
    """`token` is "" where nobody signs in."""

    name: str = ""
    token: str = ""


NOBODY = Visitor()
VISITOR: ContextVar[Visitor] = ContextVar("visitor", default=NOBODY)

_FORM = re.compile(r'(<form method="post" action="[^"?]*)(")')


def form_token(session_token: str) -> str:
    """Known to who has the session's cookie alone, and no way back to it."""
    return sha256(f"form {session_token}".encode()).hexdigest()[:32]


def with_form_token(markup: str) -> str:
    """The page with the token in the address of every form that changes something."""
    token = VISITOR.get().token
    return _FORM.sub(rf"\1?form={token}\2", markup) if token else markup
