"""Garden wall bonds: three stretchers to a header (Flemish), three stretcher courses to a header course (English)."""

from app.brickwork.bond import ZERO, Bond, G, P, header, stretcher

BONDS = (
    Bond(
        "flemish-garden-wall",
        "Flemish garden wall bond, three stretchers to a header",
        (stretcher(), stretcher(P), stretcher(2 * P), header(3 * P)),
        across=(7 * P / 2, ZERO),
        up=(7 * P / 4, G),
    ),
    Bond(
        "english-garden-wall",
        "English garden wall bond, headers every 4th course",
        (
            stretcher(),
            stretcher(P / 2, G),
            stretcher(ZERO, 2 * G),
            header(P / 4, 3 * G),
            header(3 * P / 4, 3 * G),
        ),
        across=(P, ZERO),
        up=(ZERO, 4 * G),
    ),
)
