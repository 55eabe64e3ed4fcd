"""Common bond: running courses with a course of headers, or a Flemish course, as every n-th."""

from app.brickwork.bond import ZERO, Bond, Cell, G, P, header, stretcher


def _running_courses(count: int, along: int) -> tuple[Cell, ...]:
    return tuple(stretcher(P * (k % 2 / 2 + i), G * k) for k in range(count) for i in range(along))


def _common(every: int) -> Bond:
    top = G * (every - 1)
    headers = (header(P / 4, top), header(3 * P / 4, top))
    cells = _running_courses(every - 1, 1) + headers
    words = f"Common bond, headers every {every}th course"
    return Bond(f"common-{every}", words, cells, across=(P, ZERO), up=(ZERO, every * G))


def _common_flemish(every: int) -> Bond:
    """Three modules along, as the Flemish course repeats after one and a half."""
    top = G * (every - 1)
    flemish = tuple(
        cell for start in (0.25, 1.75) for cell in (stretcher(P * start, top), header(P * (start + 1), top))
    )
    cells = _running_courses(every - 1, 3) + flemish
    words = f"Common bond, Flemish course every {every}th"
    return Bond(f"common-{every}-flemish", words, cells, across=(3 * P, ZERO), up=(ZERO, every * G))


BONDS = (*(_common(every) for every in (5, 6, 7)), *(_common_flemish(every) for every in (5, 6, 7)))
