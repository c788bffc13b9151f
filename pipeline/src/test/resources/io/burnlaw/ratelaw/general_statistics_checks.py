"""Expected values for tests, from general statistics libraries: statsmodels 0.15.0, SciPy 1.17.1, NumPy.

    python general_statistics_checks.py

Reads the data sets beside it and prints the numbers that the tests quote; one run, nothing adjusted.
"""
import csv
import pathlib

import numpy as np
import statsmodels.api as sm
from scipy import stats
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
