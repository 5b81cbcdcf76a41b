"""Exact loss of absorbing half-planes one behind the other, for several_edges-exact.csv.

Method: repeated Fresnel integral of L. E. Vogler (Radio Science 17, 1982; NTIA Report 81-86), the inner integrals taken as
matrix products over Gauss-Legendre nodes (each integral couples only neighbouring edges). Checked here against the closed form
1/(N+1) for N edges in line at equal spacing, and against erfc for one edge.
"""
import math
import random

import numpy as np
from scipy.special import erfc

NODES = 700
REACH = 8.5


def exact_db(d_km, h_m, wavelength_m):
    r = [1000 * (b - a) for a, b in zip(d_km, d_km[1:])]
    n = len(r) - 1
    k = 2 * math.pi / wavelength_m
    beta = []
    for m in range(n):
        theta = (h_m[m + 1] - h_m[m]) / r[m] + (h_m[m + 1] - h_m[m + 2]) / r[m + 1]
        beta.append(theta * np.sqrt(1j * k * r[m] * r[m + 1] / (2 * (r[m] + r[m + 1]))))
    alpha = [math.sqrt(r[m] * r[m + 2] / ((r[m] + r[m + 1]) * (r[m + 1] + r[m + 2]))) for m in range(n - 1)]
    spread = 1.0
    if n >= 2:
        spread = math.sqrt(np.prod(r[1:n]) * sum(r) / np.prod([r[m] + r[m + 1] for m in range(n)]))
    x, w = np.polynomial.legendre.leggauss(NODES)
    top = REACH + 2 * n
    t = top * (x + 1) / 2
    w = w * top / 2
    field = np.exp(-t * t - 2 * beta[n - 1] * t)
    for m in range(n - 2, -1, -1):
        field = np.exp(-t * t - 2 * beta[m] * t) * (np.exp(2 * alpha[m] * np.outer(t, t)) @ (w * field))
    ratio = spread * math.pi ** (-n / 2) * np.sum(w * field)
    return -20 * math.log10(abs(ratio))


def check():
    for n, want in ((1, 6.0206), (2, 9.5424), (3, 12.0412), (4, 13.9794)):
        got = exact_db(list(range(n + 2)), [0] * (n + 2), 1.0)
        assert abs(got - want) < 1e-3, (n, got, want)
    nu = 1.3
    h = nu / math.sqrt(2 * 10000 / (0.7 * 4000 * 6000))
    want = -20 * math.log10(abs(0.5 * erfc(nu * np.sqrt(1j * math.pi / 2))))
    assert abs(exact_db([0, 4, 10], [0, h, 0], 0.7) - want) < 1e-6


def main():
    check()
    random.seed(20240817)
    print("# source: repeated Fresnel integral over absorbing half-planes, Vogler (1982), NTIA Report 81-86")
    print("# made by: src/test/reference/propagation_edges.py; distances km, heights m, lists separated by |; rounded to 0.001 dB")
    print("# 120 seeded paths of 2 to 4 edges, 30 to 900 MHz, loss above 8 dB, ends at height 0")
    print("distance_km,height_m,wavelength_m,exact_db")
    made = 0
    while made < 120:
        n = random.randint(2, 4)
        length = random.uniform(4, 20)
        d = sorted(random.uniform(0.1, 0.9) * length for _ in range(n))
        d = [0] + [round(v, 2) for v in d] + [round(length, 2)]
        if min(b - a for a, b in zip(d, d[1:])) < 0.3:
            continue
        h = [0] + [round(random.uniform(5, 100), 1) for _ in range(n)] + [0]
        lam = round(299.792458 / random.choice([30, 50, 150, 450, 900]), 4)
        if max(abs(b) for b in h) > 0 and not blocked(d, h):
            continue
        db = exact_db(d, h, lam)
        if db < 8 or db > 55:
            continue
        print("|".join(map(str, d)) + "," + "|".join(map(str, h)) + f",{lam},{db:.3f}")
        made += 1


def blocked(d, h):
    """Every edge stands on the string stretched from end to end."""
    hull = []
    for i in range(len(d)):
        while len(hull) >= 2:
            a, b = hull[-2], hull[-1]
            if (h[b] - h[a]) * (d[i] - d[b]) <= (h[i] - h[b]) * (d[b] - d[a]):
                hull.pop()
            else:
                break
        hull.append(i)
    return len(hull) > 2


if __name__ == "__main__":
    main()
