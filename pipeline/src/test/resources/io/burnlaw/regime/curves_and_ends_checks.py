"""Expected values for tests of package regime, from general libraries: SciPy 1.17.1 and NumPy 2.

    python curves_and_ends_checks.py

The points are invented and stand below. One run, nothing adjusted.
"""
import numpy as np
from scipy import optimize, stats

PRESSURE = np.array([0.8, 1.0, 1.3, 1.7, 2.2, 2.9, 3.8, 5.0, 6.5])  # MPa
RATE = np.array([3.92, 4.31, 4.88, 5.41, 6.02, 6.85, 7.52, 8.61, 9.37])  # mm/s
WEIGHT = (RATE / 1000) ** 2 / np.mean((RATE / 1000) ** 2)  # of constant scatter
p, y, w = PRESSURE * 1e6, np.log(RATE / 1000), WEIGHT
x = np.log(p) - np.mean(np.log(p))


def show(title, *values):
    print(title, *("%.12g" % value for value in np.ravel(np.concatenate([np.ravel(v) for v in values]))))


def rss(fitted):
    return np.sum(w * (y - fitted) ** 2)


quadratic = np.polyval(np.polyfit(x, y, 2, w=np.sqrt(w)), x)
show("quadratic: rss, fitted", rss(quadratic), quadratic)


def two_term(ln_ratio):
    shape = -np.log(np.exp(ln_ratio) / p + 1 / np.cbrt(p))
    return shape + np.average(y - shape, weights=w)


# 1/r = A/P + B/P^(1/3); ln(A/B) between both ends of sense
best = optimize.minimize_scalar(lambda q: rss(two_term(q)), bounds=(4, 16), method="bounded", options={"xatol": 1e-12})
show("two terms: ln(A/B), rss, fitted", best.x, rss(two_term(best.x)), two_term(best.x))


def offset(zero):
    return np.polyval(np.polyfit(np.log(p - zero), y, 1, w=np.sqrt(w)), np.log(p - zero))


best = optimize.minimize_scalar(lambda z: rss(offset(1e6 * z)), bounds=(-3, 0.7), method="bounded", options={"xatol": 1e-12})
show("offset: MPa, rss, fitted", best.x, rss(offset(1e6 * best.x)), offset(1e6 * best.x))


def lone(name, group, rest, sign, level):
    """The law of the rest predicts the mean of the group; equal weights."""
    lx, ly = np.log(p[rest]), np.log(r[rest])
    slope, level_at = np.polyfit(lx, ly, 1)
    s2 = np.sum((ly - np.polyval([slope, level_at], lx)) ** 2) / (len(lx) - 2)
    gx, gy = np.log(p[group]).mean(), np.log(r[group]).mean()
    std = np.sqrt(s2 * (1 / len(group) + 1 / len(lx) + (gx - lx.mean()) ** 2 / np.sum((lx - lx.mean()) ** 2)))
    deviation = sign * (np.polyval([slope, level_at], gx) - gy)
    show(name + ": rate, ratio, interval, gap, middle of it", np.exp(gy), np.exp(deviation),
         np.exp(deviation + np.array(stats.t.interval(level, len(lx) - 2, 0, std))),
         (p[group].max(), p[rest].min()) if sign > 0 else (p[rest].max(), p[group].min()),
         np.sqrt(p[group].max() * p[rest].min()) if sign > 0 else np.sqrt(p[rest].max() * p[group].min()))


p = 1e6 * np.array([0.5, 0.6, 1.0, 1.4, 1.9, 2.6, 3.3, 4.5])
r = 1e-3 * np.array([2.01, 2.12, 5.03, 5.61, 6.34, 7.01, 7.75, 8.64])
lone("two slow points", [0, 1], list(range(2, 8)), 1, 0.9)
p = 1e6 * np.array([1.0, 1.4, 1.9, 2.6, 3.3, 4.5, 7.0])
r = 1e-3 * np.array([5.03, 5.61, 6.34, 7.01, 7.75, 8.64, 25.2])
lone("one fast point", [6], list(range(6)), -1, 0.95)
