"""A share token is a key, and keys stay out of logs."""

import logging

from app.web.logs import HideTokens


def _line(record: logging.LogRecord) -> str:
    assert HideTokens().filter(record)
    return record.getMessage()


def test_the_access_log_hides_the_token() -> None:
    arguments = ("127.0.0.1:5", "GET", "/s/abcDEF-123_456?x=1", "1.1", 303)
    record = logging.LogRecord("uvicorn.access", 20, "", 1, '%s - "%s %s HTTP/%s" %d', arguments, None)
    assert _line(record) == '127.0.0.1:5 - "GET /s/[hidden]?x=1 HTTP/1.1" 303'


def test_a_token_in_the_message_itself_is_hidden() -> None:
    record = logging.LogRecord("uvicorn.error", 40, "", 1, "failed at http://localhost/s/abc", None, None)
    assert _line(record) == "failed at http://localhost/s/[hidden]"


def test_other_lines_stay_as_they_are() -> None:
    record = logging.LogRecord("uvicorn.access", 20, "", 1, "%s %d", ("/static/abc/base.css", 200), None)
    assert _line(record) == "/static/abc/base.css 200"
