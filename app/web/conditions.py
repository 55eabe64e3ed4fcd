"""The headers that say which revision a request means: ETag, If-Match, If-None-Match, Idempotency-Key."""

import re
from typing import Annotated
from uuid import uuid4

from fastapi import Header

from app.web.problems import failure

TAG = re.compile(r'"rev-([1-9][0-9]{0,8})"')

IfMatch = Annotated[str | None, Header(description='The tag of the revision this is based on, such as "rev-37".')]
CommandId = Annotated[
    str | None,
    Header(alias="Idempotency-Key", max_length=64, description="Sent again with the same id, a change is made once."),
]


def tag(revision: int) -> str:
    return f'"rev-{revision}"'


def base_revision(if_match: str | None) -> int:
    """The revision that a change is based on; raises Failure 428 when none is named, 400 when it cannot be read."""
    if if_match is None or if_match.strip() == "*":
        raise failure("missing-base", 'Send If-Match with the tag of the revision you read, such as "rev-37".')
    found = TAG.fullmatch(if_match.strip())
    if found is None:
        raise failure("malformed", f'If-Match: found {if_match}, expected a tag such as "rev-37".')
    return int(found[1])


def command_id(given: str | None) -> str:
    return given or uuid4().hex
