#!/usr/bin/env python3
"""The same job with general tools: pandas reads, NumPy reduces, SciPy fits. Prints the law.

usage: with_pandas.py FOLDER
"""
import os
import sys

import numpy as np
import pandas as pd
from scipy.optimize import curve_fit

folder = sys.argv[1]
log = pd.read_csv(os.path.join(folder, "firings.csv"))
pressures, rates = [], []
for row in log.itertuples(index=False):
    trace = pd.read_csv(os.path.join(folder, row[2]))
    t = trace["time [s]"].to_numpy()
    p = trace["pressure [MPa]"].to_numpy()
    p = p - np.median(p[t < 0.15])
    peak = p.max()
    above = np.flatnonzero(p > 0.1 * peak)
    first, last = above[0], above[-1]
    # web burnout: the steepest fall of the smoothed record, a plain stand-in for the tangent bisector
    width = max(5, len(p) // 500)
    smooth = np.convolve(p, np.ones(width) / width, mode="same")
    burnout = first + int(np.argmin(np.gradient(smooth[first:last], t[first:last])))
    web = (row[5] - row[6]) / 2
    burn = slice(first, burnout + 1)
    duration = t[burnout] - t[first]
    absolute = p + 0.101325
    whole = np.trapezoid(absolute[first:last], t[first:last]) if hasattr(np, "trapezoid") else np.trapz(absolute[first:last], t[first:last])
    part = np.trapezoid(absolute[burn], t[burn]) if hasattr(np, "trapezoid") else np.trapz(absolute[burn], t[burn])
    pressures.append(part / duration)
    rates.append(web / duration * part / whole)
x, y = np.array(pressures), np.array(rates)
(a, n), covariance = curve_fit(lambda x, a, n: a * x**n, x, y, p0=(y.mean(), 0.4), sigma=y)
print(f"a = {a:.4f} mm/s at 1 MPa, n = {n:.4f} ± {covariance[1, 1] ** 0.5:.4f}, {len(y)} firings")
