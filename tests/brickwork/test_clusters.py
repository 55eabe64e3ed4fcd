"""Groups of touching bricks of one colour, against scipy's connected components."""

import numpy as np
import pytest
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components
from shapes import example

from app.brickwork.clusters import clusters, neighbours
from app.brickwork.layout import lay_out
from app.brickwork.touching import touching


@pytest.mark.parametrize("seed", range(40))
def test_groups_are_the_connected_components_of_one_colour(seed: int) -> None:
    """Bricks that touch by chance, few and many, in one to five colours."""
    chance = np.random.default_rng(seed)
    count = int(chance.integers(1, 400))
    pairs = chance.integers(0, count, (int(chance.integers(0, 3 * count)), 2))
    _alike(count, pairs, chance.integers(0, 1 + seed % 5, count).astype(np.int8))


@pytest.mark.parametrize("colours", [1, 2, 3])
def test_groups_of_a_face_are_its_connected_components(colours: int) -> None:
    layout = lay_out(example("window", bond="flemish"))
    chance = np.random.default_rng(colours)
    _alike(len(layout.units), touching(layout), chance.integers(0, colours, len(layout.units)).astype(np.int8))


def test_a_long_chain_in_any_order_is_one_group() -> None:
    """The worst case for passing on the lowest number from brick to brick."""
    row = np.random.default_rng(0).permutation(3_000)
    _alike(3_000, np.column_stack([row[:-1], row[1:]]), np.zeros(3_000, dtype=np.int8))


def _alike(count: int, pairs: np.ndarray, colours: np.ndarray) -> None:
    found = clusters(neighbours(count, pairs), colours)
    same = pairs[colours[pairs[:, 0]] == colours[pairs[:, 1]]]
    graph = coo_matrix((np.ones(len(same)), (same[:, 0], same[:, 1])), shape=(count, count))
    groups, of = connected_components(graph, directed=False)
    assert len(found.size) == groups
    assert found.of.tolist() == of.tolist()
    assert found.size.tolist() == np.bincount(of, minlength=groups).tolist()
