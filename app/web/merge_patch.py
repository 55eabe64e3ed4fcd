"""JSON merge patch: RFC 7396, section 2."""

from typing import Any


def merged(target: Any, patch: Any) -> Any:
    """`target` with `patch` applied, keys in their old order; null takes a member away, a list is replaced whole."""
    if not isinstance(patch, dict):
        return patch
    old = target if isinstance(target, dict) else {}
    kept = {
        key: merged(value, patch[key]) if key in patch else value
        for key, value in old.items()
        if key not in patch or patch[key] is not None
    }
    return kept | {key: merged(None, value) for key, value in patch.items() if key not in old and value is not None}
