"""Redundancy numbers, w and smallest detectable errors of plan networks by dense numpy, the second
method of the Go tests.

In (JSON on standard input): networks, each with start (x and y of all marks, then the set-ups),
rows of observations: kind, at (first scalar of each mark), setup (first scalar, or -1), values, sd,
flip, solve, zero, scale, rise (number of a shared rise, or -1), tool (number of a tool, or -1),
solve_zero, solve_scale. Out: for each network the degrees of freedom and, part by part, r, w and
the smallest detectable error (Baarda 1968: 4.13 sd / sqrt(r)).

Nothing is shared with the program under test: lines, circles, rises and tools have unknowns of
their own here, derivatives are central differences, the datum is that of the shortest step, and
the projector on the residuals comes from a singular value decomposition.
"""
import json
import sys

import numpy as np


class Net:
    def __init__(self, net):
        self.rows = net["rows"]
        x = list(net["start"])
        self.free = {}
        for n, row in enumerate(self.rows):
            p = [complex(x[a], x[a + 1]) for a in row["at"]]
            if row["kind"] == "straight":
                self.free[n] = (len(x), 2)
                x += line(p)
            if row["kind"] == "arc":
                self.free[n] = (len(x), 3)
                x += circle(p)
            if row["rise"] >= 0 and ("rise", row["rise"]) not in self.free:
                self.free["rise", row["rise"]] = (len(x), 1)
                x.append(row["values"][0])
            for what, at in (("solve_zero", 0.0), ("solve_scale", 1.0)):
                if row[what] and (what, row["tool"]) not in self.free:
                    self.free[what, row["tool"]] = (len(x), 1)
                    x.append(at)
        self.x = np.array(x)
        self.l = np.array([v for row in self.rows for v in row["values"]])
        self.sd = np.array([s for row in self.rows for s in row["sd"]])

    def gauge(self, x, row, d):
        zero, scale = row["zero"], row["scale"]
        if row["solve_zero"]:
            zero = x[self.free["solve_zero", row["tool"]][0]]
        if row["solve_scale"]:
            scale = x[self.free["solve_scale", row["tool"]][0]]
        return scale * d + zero

    def predicted(self, x):
        out = []
        for n, row in enumerate(self.rows):
            p = [complex(x[a], x[a + 1]) for a in row["at"]]
            kind = row["kind"]
            if kind == "tie":
                out.append(self.gauge(x, row, abs(p[1] - p[0])))
            elif kind == "offset":
                u = p[2] - p[1]
                q = (p[0] - p[1]) * u.conjugate() / abs(u)
                out += [q.real, q.imag]
            elif kind == "seen":
                s = row["setup"]
                q = (p[0] - complex(x[s], x[s + 1])) * np.exp(-1j * x[s + 2])
                if row["solve"]:
                    q *= x[s + 3]
                out += [q.real, -q.imag if row["flip"] else q.imag]
            elif kind == "turn":
                a = np.angle((p[0] - p[1]) / (p[2] - p[1]))
                read = row["values"][0]
                out.append(a + 2 * np.pi * round((read - a) / (2 * np.pi)))
            elif kind == "square":
                out.append(abs(np.angle((p[0] - p[1]) / (p[2] - p[1]))))
            elif kind == "straight":
                at = self.free[n][0]
                out += [(q * np.exp(-1j * x[at])).imag - x[at + 1] for q in p]
            elif kind == "arc":
                at = self.free[n][0]
                out += [abs(q - complex(x[at], x[at + 1])) - x[at + 2] for q in p]
            elif kind == "bow" and len(p) == 2:
                out.append(self.gauge(x, row, x[self.free["rise", row["rise"]][0]]))
            elif kind == "bow":
                out.append(self.gauge(x, row, rise(*p)))
            else:
                raise ValueError(kind)
        return np.array(out)

    def design(self):
        a = np.empty((len(self.l), len(self.x)))
        for c in range(len(self.x)):
            h = 1e-6
            up, down = self.x.copy(), self.x.copy()
            up[c] += h
            down[c] -= h
            a[:, c] = (self.predicted(up) - self.predicted(down)) / (2 * h)
        return a / self.sd[:, None]

    def adjust(self):
        for _ in range(60):
            step = np.linalg.pinv(self.design(), 1e-9) @ ((self.l - self.predicted(self.x)) / self.sd)
            self.x += step
            if abs(step).max() < 1e-11:
                break
        u, s, _ = np.linalg.svd(self.design(), full_matrices=False)
        u = u[:, s > 1e-9 * s[0]]
        r = 1 - (u * u).sum(axis=1)
        v = (self.predicted(self.x) - self.l) / self.sd
        return {
            "dof": len(self.l) - u.shape[1],
            "r": r.tolist(),
            "w": (v / np.sqrt(np.maximum(r, 1e-12))).tolist(),
            "detectable": (4.13 * self.sd / np.sqrt(np.maximum(r, 1e-12))).tolist(),
        }


def line(p):
    q = np.array(p) - np.mean(p)
    angle = np.angle((q * q).sum()) / 2
    return [angle, (np.mean(p) * np.exp(-1j * angle)).imag]


def circle(p):
    a = np.array([[q.real, q.imag, 1] for q in p])
    b = np.array([abs(q) ** 2 for q in p])
    s = np.linalg.lstsq(a, b, rcond=None)[0]
    return [s[0] / 2, s[1] / 2, float(np.sqrt(s[2] + (s[0] ** 2 + s[1] ** 2) / 4))]


def rise(a, b, m):
    """Rise over the chord a-b of the circle through a, m and b, on the side of m."""
    u = (b - a) / abs(b - a)
    q = (m - a) / u  # chord along the real axis
    half = abs(b - a) / 2
    up = 1 if q.imag > 0 else -1
    y = up * q.imag
    centre = ((q.real - half) ** 2 + y * y - half * half) / (2 * y)
    return centre + np.hypot(half, centre)


json.dump([Net(n).adjust() for n in json.load(sys.stdin)], sys.stdout)
