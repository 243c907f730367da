"""The nodal matrix of a network: where its figures stand is worked out once, the figures are filled in each round."""

from copy import copy
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from scipy.sparse import csc_array
from scipy.sparse.linalg import SuperLU, splu

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]


ORDERED_ONCE_POINTS = 200  # from here it pays to look for the order of rows once, not in every round


@dataclass(frozen=True)
class Factors:
    """A factorised matrix; its rows stand in the order that fills it least."""

    table: SuperLU
    row_of: Ints
    point_of: Ints

    def solve(self, pushed: Floats) -> Floats:
        """Give the volts of each point from the amps pushed into it."""
        return np.asarray(self.table.solve(pushed[self.point_of])[self.row_of], dtype=float)

    def loses_power(self) -> bool:
        """Tell whether every change of volts loses watts in the network: no pivot is below zero."""
        return bool(np.min(self.table.U.diagonal(), initial=1.0) > 0.0)


class Pattern:
    """Conductances between points: some stay, the rest change from round to round."""

    def __init__(self, *, fixed: Ints, fixed_siemens: Floats, changing: Ints, ground: Ints, count: int) -> None:
        """Place every conductance; each island is grounded at its reference.

        The ground carries nothing: an island has no other way to it. Its size only has to suit the solver.
        """
        self.ends = np.concatenate([fixed, changing])
        self.count, self.ground = count, ground
        weight = np.full(len(ground), float(np.max(fixed_siemens, initial=1.0)))
        self.row_of = self.point_of = np.arange(count)
        self.order = "MMD_AT_PLUS_A"
        self._place(len(fixed), fixed_siemens, weight)
        if count >= ORDERED_ONCE_POINTS:
            self.row_of = np.asarray(self.factors(np.ones(len(changing))).table.perm_c, dtype=np.intp)
            self.point_of = np.argsort(self.row_of)
            self.order = "NATURAL"
            self._place(len(fixed), fixed_siemens, weight)

    def with_fixed(self, fixed_siemens: Floats) -> "Pattern":
        """Give the same pattern with other conductances that stay."""
        other = copy(self)
        weight = np.full(len(self.ground), float(np.max(fixed_siemens, initial=1.0)))
        figures = np.concatenate([_four(fixed_siemens), weight])
        other.fixed = np.bincount(self.staying, figures, minlength=len(self.fixed))
        return other

    def _place(self, fixed: int, fixed_siemens: Floats, weight: Floats) -> None:
        count, ground = self.count, self.row_of[self.ground]
        a, b = self.row_of[self.ends[:, 0]], self.row_of[self.ends[:, 1]]
        places = np.concatenate([a * count + a, b * count + b, b * count + a, a * count + b, ground * count + ground])
        cells, cell_of = np.unique(places, return_inverse=True)
        by_end, at_ground = cell_of[: 4 * len(a)].reshape(4, -1), cell_of[4 * len(a) :]
        self.changing = by_end[:, fixed:].ravel()
        self.staying = np.concatenate([by_end[:, :fixed].ravel(), at_ground])
        self.fixed = np.bincount(self.staying, np.concatenate([_four(fixed_siemens), weight]), minlength=len(cells))
        starts = np.searchsorted(cells, np.arange(count + 1) * count)
        columns = (np.zeros(len(cells)), (cells % max(count, 1)).astype(np.intc), starts.astype(np.intc))
        self.table = csc_array(columns, shape=(count, count))

    def factors(self, changing_siemens: Floats) -> Factors:
        """Factorise the matrix with these conductances in it; RuntimeError where it is singular."""
        added = np.bincount(self.changing, _four(changing_siemens), minlength=len(self.fixed))
        np.add(self.fixed, added, out=self.table.data)
        return Factors(_factorise(self.table, self.order), self.row_of, self.point_of)


def _factorise(table: csc_array, order: str) -> SuperLU:
    # Pivots stay on the diagonal: their signs then tell whether the network can give what is asked of it.
    return splu(table, permc_spec=order, diag_pivot_thresh=0.0, options={"SymmetricMode": True})


def _four(siemens: Floats) -> Floats:
    """Give what a conductance adds to the cells of its two points and to the two cells between them."""
    return np.concatenate([siemens, siemens, -siemens, -siemens])
