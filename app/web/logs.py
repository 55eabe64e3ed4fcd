"""Keeps share tokens out of the log: a token is a key."""

import logging
import re

TOKEN = re.compile(r"(/s/)[^\s?/\"']+")
LOGGERS = ("uvicorn.access", "uvicorn.error", "uvicorn")


class HideTokens(logging.Filter):
    """Replaces the token in every line that holds an address of a share link."""

    def filter(self, record: logging.LogRecord) -> bool:
        line = record.getMessage()
        if TOKEN.search(line):
            record.args = tuple(map(hidden, record.args)) if isinstance(record.args, tuple) else ()
            record.msg = hidden(record.msg if record.args else line)
        return True


def hide_tokens() -> None:
    """Puts the filter on the server's loggers, once."""
    for name in LOGGERS:
        logger = logging.getLogger(name)
        if not any(isinstance(known, HideTokens) for known in logger.filters):
            logger.addFilter(HideTokens())


def hidden(value: object) -> object:
    """Text without tokens; anything else as it is."""
    return TOKEN.sub(r"\1[hidden]", value) if isinstance(value, str) else value
