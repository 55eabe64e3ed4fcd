"""Linear and integer programs: the least cost at which columns cover rows, solved by HiGHS.

One thread and limits that count steps, so that the same program has the same answer on every machine.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import inf

import highspy
import numpy as np
from highspy._core import _Highs as Solver  # `highspy.Highs` around it greets on standard output

from app.brickwork.lattice import Floats

Column = Mapping[int, int]
"""What one unit of a column gives, by row."""

NODES = 2_000
"""Branches of an integer program; what is not proven by then is left open."""

_GAP = 1e-6
"""Bound and cost that are no farther apart are the same."""


@dataclass(frozen=True, slots=True, eq=False)
class Answer:
    """How much of each column, None where none was found in time; no cover costs less than `bound`.

    `prices`, of a linear program alone, are what one more of each row would cost.
    """

    amounts: Floats | None
    cost: float
    bound: float
    prices: Floats

    @property
    def is_proven(self) -> bool:
        return self.amounts is not None and self.cost - self.bound <= _GAP


def cheapest(
    columns: Sequence[Column],
    wanted: Sequence[int],
    *,
    costs: Sequence[float] | None = None,
    is_whole: bool = True,
    nodes: int = NODES,
) -> Answer:
    """Amounts of the columns that give at least `wanted[k]` of each row k; every column costs 1 where `costs` is None.

    Whole amounts where `is_whole`, the best so far after `nodes` branches. Raises ValueError where no column gives
    some row that is wanted.
    """
    given = {row for column in columns for row in column}
    if missing := [row for row, count in enumerate(wanted) if count > 0 and row not in given]:
        raise ValueError(f"columns: found none that gives row {missing[0]}, expected one or more")
    solver = Solver()
    solver.passOptions(_options(nodes))
    solver.passModel(_model(columns, wanted, costs, is_whole))
    solver.run()
    return _answer(solver, is_whole)


def _options(nodes: int) -> highspy.HighsOptions:
    options = highspy.HighsOptions()
    options.output_flag = False
    options.threads, options.parallel = 1, "off"
    options.mip_rel_gap = 0.0
    options.mip_max_nodes = nodes
    return options


def _model(
    columns: Sequence[Column], wanted: Sequence[int], costs: Sequence[float] | None, is_whole: bool
) -> highspy.HighsLp:
    """The program column by column; no column is needed more often than the most that is wanted of a row."""
    model, count = highspy.HighsLp(), len(columns)
    model.num_col_, model.num_row_ = count, len(wanted)
    model.col_cost_ = np.ones(count) if costs is None else np.array(costs, dtype=float)
    model.col_lower_, model.col_upper_ = np.zeros(count), np.full(count, float(max(wanted, default=0)))
    model.row_lower_, model.row_upper_ = np.array(wanted, dtype=float), np.full(len(wanted), inf)
    cells = model.a_matrix_
    cells.format_ = highspy.MatrixFormat.kColwise
    cells.num_col_, cells.num_row_ = count, len(wanted)
    cells.start_ = np.cumsum([0, *map(len, columns)], dtype=np.int32)
    cells.index_ = np.array([row for column in columns for row in column], dtype=np.int32)
    cells.value_ = np.array([times for column in columns for times in column.values()], dtype=float)
    if is_whole:
        model.integrality_ = [highspy.HighsVarType.kInteger] * count
    return model


def _answer(solver: Solver, is_whole: bool) -> Answer:
    info, solution = solver.getInfo(), solver.getSolution()
    is_found = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
    cost = float(info.objective_function_value) if is_found else inf
    bound = max(0.0, float(info.mip_dual_bound)) if is_whole else cost
    amounts = np.array(solution.col_value) if is_found else None
    return Answer(amounts, cost, bound, np.array([] if is_whole else solution.row_dual, dtype=float))
