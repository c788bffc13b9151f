"""Expected values for tests, from general statistics libraries: statsmodels 0.15.0, SciPy 1.17.1, NumPy.

    python general_statistics_checks.py

Reads the data sets beside it and prints the numbers that the tests quote; one run, nothing adjusted.
"""
import csv
import pathlib

import numpy as np
import statsmodels.api as sm
from scipy import optimize, stats
from statsmodels.stats.outliers_influence import OLSInfluence

HERE = pathlib.Path(__file__).parent


def read(name):
    with open(HERE / name, encoding="utf-8") as file:
        rows = [row for row in csv.reader(line for line in file if not line.startswith("#")) if row]
    return {heading: np.array([row[i] for row in rows[1:]]) for i, heading in enumerate(rows[0])}


def line(x, y):
    return sm.OLS(y, sm.add_constant(x)).fit()


def show(title, *values):
    print(title, *("%.12g" % value for value in np.ravel(np.concatenate([np.ravel(v) for v in values]))))


mammals = read("mammals_loglog.csv")
x, y = (np.log(mammals[k].astype(float)) for k in ("body_kg", "brain_g"))
fit = line(x, y)
influence = OLSInfluence(fit)
for row in (0, 18, 31):
    show("mammals row %d: leverage, internal, external, Cook" % row, influence.hat_matrix_diag[row],
         influence.resid_studentized_internal[row], influence.resid_studentized_external[row],
         influence.cooks_distance[0][row])
show("mammals 95 % mean and next at ln x = 3", fit.get_prediction([[1, 3.0]]).conf_int(),
     fit.get_prediction([[1, 3.0]]).conf_int(obs=True))


def slope(x, y, axis=-1):
    dx = x - x.mean(axis=axis, keepdims=True)
    return (dx * y).sum(axis=axis) / (dx * dx).sum(axis=axis)


bca = stats.bootstrap((x, y), slope, paired=True, n_resamples=200_000, method="BCa", batch=10_000,
                      random_state=np.random.default_rng(1)).confidence_interval
show("mammals slope, 95 % BCa", [bca.low, bca.high])

phones = read("phones.csv")
robust = sm.RLM(phones["calls"].astype(float), sm.add_constant(phones["year"].astype(float)),
                M=sm.robust.norms.HuberT(1.345)).fit(maxiter=1000, tol=1e-13)
show("phones, Huber: parameters, standard errors, scale", robust.params, robust.bse, [robust.scale])

trees = read("trees.csv")
g, h, v = (trees[k].astype(float) for k in ("girth", "height", "volume"))
plane = sm.OLS(np.log(v), np.column_stack([np.ones_like(g), np.log(g), h])).fit()
show("trees: parameters, standard errors, s", plane.params, plane.bse, [np.sqrt(plane.scale)])
show("trees: 95 % of the height's coefficient", plane.conf_int()[2])

grunfeld = read("grunfeld.csv")
firm = grunfeld["firm"]
x, y = (np.log(grunfeld[k].astype(float)) for k in ("value", "invest"))
dummies = (firm[:, None] == np.unique(firm)[None, :]).astype(float)
show("grunfeld within", [sm.OLS(y, np.column_stack([dummies, x])).fit().params[-1]])
means = np.array([(x[firm == f].mean(), y[firm == f].mean()) for f in np.unique(firm)])
between = line(means[:, 0], means[:, 1])
show("grunfeld between: slope, its standard error, s", [between.params[1], between.bse[1], np.sqrt(between.scale)])

pearson = read("pearson_york.csv")
x, y, w = (pearson[k].astype(float) for k in ("x", "y", "wy"))
wls = sm.WLS(y, sm.add_constant(x), weights=w).fit(cov_type="fixed scale")
show("pearson, weights in y only, known scale: parameters, standard errors", wls.params, wls.bse)

replicates = read("replicated_line.csv")
x, y = (np.log(replicates[k].astype(float)) for k in ("x", "y"))
small, large = line(x, y), sm.OLS(y, (x[:, None] == np.unique(x)[None, :]).astype(float)).fit()
show("replicated line, lack of fit: F, p, df", large.compare_f_test(small))

# Pooling of burns, spelled out: a jackknife of the slopes, a line through the means, Welch's test with a smooth error
burns = read("invented_burns.csv")
x, y = (np.log(burns[k].astype(float)) for k in ("pressure", "rate"))
parts = [(x[burns["burn"] == b], y[burns["burn"] == b]) for b in np.unique(burns["burn"])]
parts = [(px, py) for px, py in parts if len(px) >= 5]
sloped = [(px, py) for px, py in parts if np.std(px) > 0.02]


def slope_along(chosen):
    """Common slope; each burn counts by the variance of its ln P, not by its number of samples."""
    weights = np.concatenate([np.full(len(px), 1 / len(px)) for px, _ in chosen])
    design = np.column_stack([np.concatenate([px for px, _ in chosen])]
                             + [np.concatenate([np.full(len(px), float(j == k)) for j, (px, _) in enumerate(chosen)])
                                for k in range(len(chosen))])
    return sm.WLS(np.concatenate([py for _, py in chosen]), design, weights=weights).fit().params[0]


within = slope_along(sloped)
k = len(sloped)
left_out = np.array([slope_along(sloped[:j] + sloped[j + 1:]) for j in range(k)])
within_std = np.sqrt((k - 1) / k * np.sum((left_out - within) ** 2))
means = np.array([(px.mean(), py.mean()) for px, py in parts])
between = line(means[:, 0], means[:, 1])
within_smooth = 0.001 / np.sqrt(np.mean([np.var(px) for px, _ in sloped]))
between_smooth = 0.001 / np.std(means[:, 0])
va, vb, vs = within_std ** 2, between.bse[1] ** 2, within_smooth ** 2 + between_smooth ** 2
freedom = (va + vb + vs) ** 2 / (va ** 2 / (k - 1) + vb ** 2 / between.df_resid)
t = (within - between.params[1]) / np.sqrt(va + vb + vs)
show("burns within: value, std, freedom, 90 %", [within, within_std, k - 1], stats.t.interval(0.9, k - 1, within, within_std))
show("burns between: the same", [between.params[1], between.bse[1], between.df_resid], between.conf_int(0.1)[1])
show("burns difference: the same, p", [within - between.params[1], np.sqrt(va + vb + vs), freedom],
     stats.t.interval(0.9, freedom, within - between.params[1], np.sqrt(va + vb + vs)), [2 * stats.t.sf(abs(t), freedom)])
w, b = 1 / (va + within_smooth ** 2), 1 / (vb + between_smooth ** 2)
exponent = (w * within + b * between.params[1]) / (w + b)
show("burns law: exponent, std, scatter", [exponent, np.sqrt(1 / (w + b)), np.sqrt(between.scale)])
for pressure in (1.2, 4.5):
    off = np.log(pressure) - means[:, 0].mean()
    show("burns law at %g: rate, std of ln" % pressure, [np.exp(means[:, 1].mean() + exponent * off),
         np.sqrt(between.scale / len(parts) + off ** 2 / (w + b))])
show("burns law: range", [np.exp(min(px.min() for px, _ in parts)), np.exp(max(px.max() for px, _ in parts))])

# Plane of ln r over ln P and temperature, 293 K; points of one firing share the weight of one
plane = read("invented_temperatures.csv")
p, u, r, ur, shared, temperature = (plane[k].astype(float) for k in
                                    ("pressure", "pressure_std", "rate", "rate_std", "shared", "temperature"))
share = np.array([np.sum(plane["firing"] == f) for f in plane["firing"]])
firings = len(np.unique(plane["firing"]))
design = np.column_stack([np.ones_like(p), np.log(p), temperature - 293])


def tell(name, weights, scale, quantile):
    fit = sm.WLS(np.log(r), design, weights=weights).fit(cov_type="fixed scale")
    v = np.asarray(fit.normalized_cov_params) * scale
    (level, n, sigma), m = fit.params, 1 - fit.params[1]
    # Fieller: the ends of { k : |sigma - k·(1 - n)| <= quantile · its standard deviation }
    edge = lambda k: (sigma - k * m) ** 2 - quantile ** 2 * (v[2, 2] + 2 * k * v[1, 2] + k * k * v[1, 1])
    show(name + ": sigma_p, std, 90 %", [sigma, v[2, 2] ** 0.5, sigma - quantile * v[2, 2] ** 0.5, sigma + quantile * v[2, 2] ** 0.5])
    show(name + ": pi_K, 90 %", [sigma / m, optimize.brentq(edge, sigma / m - 0.1, sigma / m, xtol=1e-15),
                                 optimize.brentq(edge, sigma / m, sigma / m + 0.1, xtol=1e-15)])
    common = v / scale @ design.T @ (weights * shared)
    show(name + ": n, its std, shared part", [n, v[1, 1] ** 0.5, common[1]])
    for pressure in (1.5, 6.0):
        row = np.array([1, np.log(pressure), 0])
        show(name + ": at %g MPa rate, std of ln by scatter, shared part" % pressure,
             [np.exp(row @ fit.params), (row @ v @ row) ** 0.5, row @ common])
    show(name + ": first and last rate at 293 K", r[[0, -1]] * np.exp(sigma * (293 - temperature[[0, -1]])))


fit = sm.WLS(np.log(r), design, weights=1 / share).fit()
scatter = np.sum(fit.resid ** 2 / share) / (firings - 3)
show("plane, proportional: scatter", [scatter ** 0.5])
tell("plane, proportional", 1 / share, scatter, stats.t.ppf(0.95, firings - 3))
n = 0.3
for _ in range(200):
    weights = 1 / (share * ((ur / r) ** 2 - shared ** 2 + (n * u / p) ** 2))  # what is shared is not the point's own
    n = sm.WLS(np.log(r), design, weights=weights).fit().params[1]
tell("plane, measured", weights, 1.0, stats.norm.ppf(0.95))
fit = sm.WLS(np.log(r), design, weights=1 / share).fit()
for _ in range(200):  # scatter so that the weighted sum of squares equals its degrees of freedom (Paule and Mandel 1982)
    carried = (fit.params[1] * u / p) ** 2
    excess = lambda s: np.sum(fit.resid ** 2 / (share * (s + carried))) - (firings - 3)
    scatter = optimize.brentq(excess, 0, 1, xtol=1e-18, rtol=1e-14)
    fit = sm.WLS(np.log(r), design, weights=1 / (share * (scatter + carried))).fit()
show("plane, pressures uncertain: scatter", [np.sqrt(np.mean(scatter + carried))])
tell("plane, pressures uncertain", 1 / (share * (scatter + carried)), 1.0, stats.t.ppf(0.95, firings - 3))

# The same firings without their temperatures: known weights that follow the slope, shared errors, studentized residual
design = design[:, :2]
n = 0.3
for _ in range(200):
    own = np.sqrt((ur / r) ** 2 - shared ** 2 + (n * u / p) ** 2)
    fit = sm.WLS(np.log(r), design, weights=1 / (share * own ** 2)).fit(cov_type="fixed scale")
    n = fit.params[1]
v = np.asarray(fit.normalized_cov_params)
common = v @ design.T @ (shared / (share * own ** 2))
show("law, measured: n, std by scatter, shared part", [n, v[1, 1] ** 0.5, common[1]])
for pressure in (1.5, 6.0):
    row = np.array([1, np.log(pressure)])
    half = np.hypot(stats.norm.ppf(0.95) * (row @ v @ row) ** 0.5, stats.norm.ppf(0.95) * (row @ common))
    show("law, measured: at %g MPa rate, std of ln by scatter, shared part, 90 %%" % pressure,
         [np.exp(row @ fit.params), (row @ v @ row) ** 0.5, row @ common], np.exp(row @ fit.params + np.array([-half, half])))
show("law, measured: scatter", [np.sqrt(np.mean(own ** 2))])
room = np.sqrt(own ** 2 - np.einsum("ij,jk,ik->i", design, v, design))
show("law, measured: studentized, third and last", (np.log(r) - design @ fit.params)[[2, 10]] / room[[2, 10]])

# A skewed few: one of eight is far off at the end, so that bias and acceleration of the bootstrap matter
x = np.log(np.array([1.0, 1.3, 1.8, 2.4, 3.1, 4.0, 5.2, 7.0]))
y = np.log(np.array([5.02, 5.41, 5.98, 6.55, 7.05, 7.61, 8.22, 10.4]))


def at_two(x, y, axis=-1):
    return y.mean(axis=axis) + slope(x, y, axis) * (np.log(2.0) - x.mean(axis=axis))


for name, statistic in (("exponent", slope), ("ln of the rate at 2 MPa", at_two)):
    bca = stats.bootstrap((x, y), statistic, paired=True, n_resamples=400_000, method="BCa", batch=10_000,
                          confidence_level=0.9, random_state=np.random.default_rng(2)).confidence_interval
    show("skewed " + name + ", 90 % BCa", [bca.low, bca.high])

robust = sm.RLM(y, sm.add_constant(x), M=sm.robust.norms.HuberT(1.345)).fit(maxiter=1000, tol=1e-13)
inside = np.abs(robust.resid / robust.scale) <= 1.345
factor = 1 + 2 / len(x) * np.var(inside, ddof=1) / np.mean(inside) ** 2  # Venables and Ripley (2002): N - 1 in the variance
kept = np.clip(robust.resid / robust.scale, -1.345, 1.345) * robust.scale
line_design = sm.add_constant(x)
v = factor ** 2 * np.sum(kept ** 2) / (len(x) - 2) / np.mean(inside) ** 2 * np.linalg.inv(line_design.T @ line_design)
show("skewed, Huber: n, its std, weights", [robust.params[1], v[1, 1] ** 0.5], robust.weights)
for pressure in (1.2, 6.0):
    row = np.array([1, np.log(pressure)])
    show("skewed, Huber: at %g MPa rate, std of ln" % pressure, [np.exp(row @ robust.params), (row @ v @ row) ** 0.5])
plain = line(x, y)
show("skewed, least squares: n, its std, rate at 1 MPa", [plain.params[1], plain.bse[1], np.exp(plain.params[0])])


# The limits of BCa from given replicates, two of them equal to the estimate (ties count half): Efron and Tibshirani
# (1993), eq. 14.9 to 14.15, with SciPy's normal distribution and NumPy's quantiles at (count + 1)p
def corrected_limits(replicates, without, estimate, level):
    bias = stats.norm.ppf((np.sum(replicates < estimate) + 0.5 * np.sum(replicates == estimate)) / len(replicates))
    d = without.mean() - without
    acceleration = stats.skew(d, bias=True) / 6 / np.sqrt(len(d))
    z = bias + stats.norm.ppf([0.5 - level / 2, 0.5 + level / 2])
    return np.quantile(replicates, stats.norm.cdf(bias + z / (1 - acceleration * z)), method="weibull")


replicates = np.array([0.30 + 0.001 * (k + 0.02 * k * k) for k in range(59)] + [0.34, 0.34])
without = np.array([0.31, 0.318, 0.3195, 0.3205, 0.322, 0.3215, 0.336])
for level in (0.5, 0.8, 0.9):
    show("BCa of given replicates, %g" % level, corrected_limits(replicates, without, 0.34, level))
