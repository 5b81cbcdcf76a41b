"""Reference rows for the rooms uncertainty and bench, from an independent statistics library (SciPy 1.17, mpmath 1.3).

Run from the project's top folder: python3 src/test/reference/bench_statistics.py
"""

import pathlib

import mpmath
import numpy as np
from scipy import optimize, stats

HERE = pathlib.Path("src/test/resources/handreach")
mpmath.mp.dps = 20
SOURCE = "# source: SciPy 1.17, made by src/test/reference/bench_statistics.py; "


def write(name, head, rows):
    lines = [SOURCE + head] + rows
    (HERE / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


def student_t():
    rows = ["degrees,probability,quantile,t,two_sided_p"]
    for nu in (1, 1.5, 2, 3.7, 5.02, 8.56, 20, 61.3, 1000, 123456):
        for p in (0.6, 0.95, 0.975, 0.995):
            t = 0.3 + 3 * p
            rows.append(f"{nu},{p},{stats.t.ppf(p, nu):.14g},{t:.3f},{2 * stats.t.sf(round(t, 3), nu):.14g}")
    write("uncertainty/student-t-scipy.csv", "15 digits", rows)


def power(delta, nu, level):
    """Mean over the chi law of the estimated scatter, to 20 digits; checked against SciPy's nct where that is finite."""
    critical = mpmath.mpf(float(stats.t.isf(level / 2, nu)))
    delta, nu = mpmath.mpf(delta), mpmath.mpf(nu)
    constant = 2 * (nu / 2) ** (nu / 2) / mpmath.gamma(nu / 2)

    def integrand(s):
        density = constant * s ** (nu - 1) * mpmath.exp(-nu * s * s / 2)
        return density * (mpmath.ncdf(delta - critical * s) + mpmath.ncdf(-delta - critical * s))

    wide = 1 + 14 / mpmath.sqrt(nu)
    stops = sorted({mpmath.mpf(0), delta / critical / 2, min(delta / critical, wide), mpmath.mpf(1), wide})
    value = float(mpmath.quad(integrand, stops))
    other = stats.nct.sf(float(critical), float(nu), float(delta)) + stats.nct.cdf(-float(critical), float(nu), float(delta))
    assert not np.isfinite(other) or abs(value - other) < 1e-8, (delta, nu, level, value, other)
    return value


def noncentral_t():
    rows = ["difference,degrees,level,power"]
    for nu in (1, 2, 3, 4.3, 5, 9, 19, 57.5, 200):
        for delta in (0, 0.5, 1, 2.2, 3, 5, 9):
            for level in (0.05, 0.01):
                rows.append(f"{delta},{nu},{level},{power(delta, nu, level):.12f}")
    write("uncertainty/power-t-mpmath.csv", "two-sided power by numerical integration to 20 digits (mpmath 1.3), rounded to 1e-12", rows)


def deltas():
    """Random sessions: levels rounded to 0.01 dB, so that the file holds them exactly."""
    rng = np.random.default_rng(20240607)
    rows = ["case,method,control,antenna,delta_db,standard_uncertainty_db,low_db,high_db,p"]
    for case in range(40):
        paired = case % 2 == 0
        n = int(rng.integers(2, 13))
        m = n if paired else int(rng.integers(2, 13))
        day = rng.normal(0, 1.5, max(n, m))
        control = np.round(-42 + rng.normal(0, rng.uniform(0.1, 2), n) + day[:n], 2)
        antenna = np.round(-42 + rng.normal(rng.uniform(-4, 4), rng.uniform(0.1, 2), m) + day[:m], 2)
        if paired:
            test = stats.ttest_rel(antenna, control)
            u = np.std(antenna - control, ddof=1) / np.sqrt(n)
        else:
            test = stats.ttest_ind(antenna, control, equal_var=False)
            u = np.sqrt(np.var(control, ddof=1) / n + np.var(antenna, ddof=1) / m)
        interval = test.confidence_interval(0.95)
        rows.append(
            f"{case},{'PAIRED' if paired else 'WELCH'},"
            f"{' '.join(f'{v:.2f}' for v in control)},{' '.join(f'{v:.2f}' for v in antenna)},"
            f"{np.mean(antenna) - np.mean(control):.12f},{u:.12f},"
            f"{interval.low:.10f},{interval.high:.10f},{test.pvalue:.12g}"
        )
    write("bench/deltas-scipy.csv", "ttest_rel and ttest_ind(equal_var=False), seed 20240607, 1e-10 dB", rows)


def detectable():
    rows = ["n,standard_deviations"]
    for n in (2, 3, 4, 5, 6, 8, 10, 15, 20, 60):
        root = optimize.brentq(lambda d: power(d * np.sqrt(n), n - 1, 0.05) - 0.8, 0.01, 20, xtol=1e-11)
        rows.append(f"{n},{root:.9f}")
    write("uncertainty/detectable-difference-mpmath.csv", "root of the power by mpmath 1.3, paired, 5 % two-sided, 80 % power, rounded to 1e-9", rows)


def ranks():
    rng = np.random.default_rng(5)
    rows = ["first,second,kendall,spearman"]
    for n in (3, 4, 7, 12):
        for ties in (False, True):
            a = rng.integers(0, 4 if ties else 1000, n).astype(float)
            b = a + rng.normal(0, 300 if not ties else 1, n)
            b = np.round(b, 0)
            if len(set(a)) < 2 or len(set(b)) < 2:
                continue
            rows.append(
                f"{' '.join(f'{v:.0f}' for v in a)},{' '.join(f'{v:.0f}' for v in b)},"
                f"{stats.kendalltau(a, b).statistic:.12f},{stats.spearmanr(a, b).statistic:.12f}"
            )
    write("uncertainty/rank-agreement-scipy.csv", "kendalltau (tau-b) and spearmanr, seed 5", rows)


for make in (student_t, noncentral_t, deltas, detectable, ranks):
    make()
