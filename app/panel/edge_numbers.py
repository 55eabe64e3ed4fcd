"""Edges are numbered along the outline: what their numbers become when a point comes or goes."""

from dataclasses import replace

from app.panel.values import Edge


def with_point(edges: tuple[Edge, ...], split: int) -> tuple[Edge, ...]:
    """The edges after a point is set on edge `split`; both of its halves keep its treatment."""
    renumbered: list[Edge] = []
    for edge in edges:
        renumbered.append(replace(edge, edge=edge.edge + (edge.edge > split)))
        if edge.edge == split:
            renumbered.append(replace(edge, edge=split + 1))
    return tuple(renumbered)


def without_point(edges: tuple[Edge, ...], point: int) -> tuple[Edge, ...]:
    """The edges after a point is gone; the edge that closes the gap is treated as the one that led to the point."""
    return tuple(replace(edge, edge=edge.edge - (edge.edge > point)) for edge in edges if edge.edge != point)
