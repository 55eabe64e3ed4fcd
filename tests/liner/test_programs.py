"""Programs against another interface to a solver: scipy's `milp` and `linprog`, and weak duality."""

import subprocess
import sys

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

from app.liner.programs import Column, cheapest

Floats = NDArray[np.float64]


def program(seed: int) -> tuple[list[Column], list[int], list[float], Floats]:
    """Up to 25 columns on up to 8 rows, each row given by one at least; the same as a matrix."""
    chance = np.random.default_rng(seed)
    rows, count = int(chance.integers(1, 9)), int(chance.integers(8, 26))
    matrix = chance.integers(0, 4, (rows, count)) * (chance.random((rows, count)) < 0.4)
    matrix[np.arange(rows), np.arange(rows)] += 1
    columns = [{row: int(times) for row, times in enumerate(column) if times} for column in matrix.T.tolist()]
    costs = chance.integers(1, 4, count).astype(float).tolist()
    return columns, chance.integers(1, 30, rows).tolist(), costs, matrix.astype(float)


@pytest.mark.parametrize("seed", range(30))
def test_whole_amounts_cost_as_little_as_another_interface_finds(seed: int) -> None:
    columns, wanted, costs, matrix = program(seed)
    found = cheapest(columns, wanted, costs=costs)
    other = milp(costs, integrality=np.ones(len(costs)), bounds=Bounds(0), constraints=LinearConstraint(matrix, wanted))
    assert found.amounts is not None
    assert found.is_proven
    assert found.cost == pytest.approx(other.fun)
    assert found.amounts == pytest.approx(np.rint(found.amounts))
    assert (matrix @ found.amounts >= np.array(wanted) - 1e-6).all()


@pytest.mark.parametrize("seed", range(30))
def test_prices_of_a_linear_program_prove_its_cost(seed: int) -> None:
    """Weak duality: no column gives more worth than it costs, and what is wanted is worth the cost of all."""
    columns, wanted, costs, matrix = program(seed)
    found = cheapest(columns, wanted, costs=costs, is_whole=False)
    other = linprog(costs, A_ub=-matrix, b_ub=-np.array(wanted))
    assert found.cost == pytest.approx(other.fun)
    assert (found.prices >= -1e-9).all()
    assert (found.prices @ matrix <= np.array(costs) + 1e-9).all()
    assert found.prices @ wanted == pytest.approx(found.cost)


def test_the_same_program_has_the_same_answer_every_time() -> None:
    columns, wanted, costs, _ = program(4)
    one, two = (cheapest(columns, wanted, costs=costs) for _ in range(2))
    assert one.amounts is not None
    assert two.amounts is not None
    assert one.amounts.tolist() == two.amounts.tolist()


def test_few_branches_leave_a_bound_that_holds() -> None:
    columns, wanted, costs, _ = program(4)
    found = cheapest(columns, wanted, costs=costs, nodes=0)
    assert 0 <= found.bound <= cheapest(columns, wanted, costs=costs).cost <= found.cost


def test_a_row_that_no_column_gives_is_refused() -> None:
    with pytest.raises(ValueError, match="found none that gives row 1"):
        cheapest([{0: 2}], [5, 4])


def test_the_solver_says_nothing_on_its_own() -> None:
    """Results go to standard output: nothing else may."""
    words = "from app.liner.programs import cheapest; print(cheapest([{0: 2}], [5]).cost)"
    done = subprocess.run([sys.executable, "-c", words], capture_output=True, text=True, check=True)
    assert (done.stdout, done.stderr) == ("3.0\n", "")
