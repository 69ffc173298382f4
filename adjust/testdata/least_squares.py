"""Adjust plan networks with scipy.optimize.least_squares, the second method of the Go tests.

In (JSON on standard input): networks, each with start (all scalars), held (numbers of the scalars
of the datum) and rows of observations: kind, at (first scalar of each block), values, sd, flip,
solve, zero, scale. Out: for each network the scalars, the covariance of the free ones (row by
row) and the sum of squares. The models are written from the definitions of the kinds, by
complex numbers.
"""
import json
import sys

import numpy as np
from scipy.optimize import least_squares


def predicted(x, row):
    p = [complex(x[a], x[a + 1]) for a in row["at"]]
    if row["kind"] == "tie":
        return [row["scale"] * abs(p[1] - p[0]) + row["zero"]]
    if row["kind"] == "offset":
        line = p[2] - p[1]
        q = (p[0] - p[1]) * line.conjugate() / abs(line)
        return [q.real, q.imag]
    at = row["at"][1]
    q = (p[0] - p[1]) * np.exp(-1j * x[at + 2])
    if row["solve"]:
        q *= x[at + 3]
    return [q.real, -q.imag if row["flip"] else q.imag]


def adjusted(net):
    start = np.array(net["start"])
    free = [i for i in range(len(start)) if i not in set(net["held"])]

    def residuals(v):
        x = start.copy()
        x[free] = v
        out = []
        for row in net["rows"]:
            out += [(p - l) / s for p, l, s in zip(predicted(x, row), row["values"], row["sd"])]
        return np.array(out)

    r = least_squares(residuals, start[free], jac="3-point", method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=20000)
    x = start.copy()
    x[free] = r.x
    return {"x": x.tolist(), "free": free, "cov": np.linalg.inv(r.jac.T @ r.jac).tolist(), "cost": float(2 * r.cost)}


json.dump([adjusted(n) for n in json.load(sys.stdin)], sys.stdout)
