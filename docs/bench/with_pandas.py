#!/usr/bin/env python3
"""The same job with general tools: pandas reads, NumPy and SciPy reduce and fit. Prints the law.

usage: with_pandas.py FOLDER [outline]

With "outline" only what a rate needs: read, zero, two events, one rate, one fit. Without it what the rate is trusted
for as well: checksum, order of the stamps, clipping, spikes, mains lines, zero and drift, two opinions on each event,
the mass balance with c*, both rates, an uncertainty from ten inputs, a fit with its interval, one law against two, and
every firing foretold from the others. Still far from all that a report of burnlaw says; written as an adept of these
tools would write it, without loops over samples.
"""
import hashlib
import io
import os
import sys

import numpy as np
import pandas as pd
from scipy import ndimage, optimize, stats

AMBIENT = 0.101325  # MPa
DENSITY = 1800.0  # kg/m3
MAD = 1.482602218505602  # of a normal distribution: standard deviation over median absolute deviation
trapezoid = np.trapezoid if hasattr(np, "trapezoid") else np.trapz


def outline(folder, row):
    trace = pd.read_csv(os.path.join(folder, row.trace))
    t = trace["time [s]"].to_numpy()
    p = trace["pressure [MPa]"].to_numpy()
    p = p - np.median(p[t < 0.15])
    above = np.flatnonzero(p > 0.1 * p.max())
    first, last = above[0], above[-1]
    # web burnout: the steepest fall of the smoothed record, a plain stand-in for the tangent bisector
    smooth = ndimage.uniform_filter1d(p, max(5, len(p) // 500), mode="nearest")
    burnout = first + int(np.argmin(np.gradient(smooth[first:last], t[first:last])))
    web = (row.outer - row.core) / 2
    burn = slice(first, burnout + 1)
    duration = t[burnout] - t[first]
    absolute = p + AMBIENT
    whole = trapezoid(absolute[first:last], t[first:last])
    part = trapezoid(absolute[burn], t[burn])
    return part / duration, web / duration * part / whole, 0.0


def without_mains(t, p, extent):
    step = (t[-1] - t[0]) / (len(t) - 1)
    for mains in (50, 60):
        width = 2 * int(0.5 / (mains * step)) + 1
        if width < 5 or len(t) < 12 * width:
            continue
        rest = (p - ndimage.uniform_filter1d(p, width, mode="nearest"))[width:-width]
        keep = np.abs(rest) < 5 * MAD * np.median(np.abs(rest))
        times, kept = t[width:-width][keep], rest[keep]
        for harmonic in (1, 2, 3):
            turn = 2 * np.pi * harmonic * mains * times
            c, s = 2 * np.mean(kept * np.cos(turn)), 2 * np.mean(kept * np.sin(turn))
            if (c * c + s * s) * len(kept) / (4 * np.mean(kept**2)) > 20 and np.hypot(c, s) > 1e-3 * extent:
                turn = 2 * np.pi * harmonic * mains * t
                p = p - c * np.cos(turn) - s * np.sin(turn)
    return p


def volume(x, outer, core, length, segments):
    inner = np.minimum(core + 2 * x, outer)
    return segments * np.pi / 4 * (outer**2 - inner**2) * (length - 2 * x)


def rates(t, absolute, events, outer, core, length, throat, mass, density, segments):
    """Both rates [mm/s] with their pressures [MPa], and c* [m/s]; lengths in mm, mass in g, times in s."""
    start, burnout, first, last = events
    area = np.pi / 4 * (throat * 1e-3) ** 2
    driven = np.where(absolute > AMBIENT, absolute, 0) * 1e6 * area
    gone = np.concatenate(([0.0], np.cumsum(0.5 * (driven[1:] + driven[:-1]) * np.diff(t))))
    velocity = gone[-1] / (mass * 1e-3)
    depths = np.linspace(0, (outer - core) / 2, 1025)
    burned = volume(0, outer, core, length, segments) - volume(depths, outer, core, length, segments)
    web = np.interp(gone / velocity / density * 1e9, burned, depths)
    inside = (t >= start) & (t <= burnout)
    even = (web >= 0.1 * depths[-1]) & (web <= 0.9 * depths[-1])
    balance = (web[even][-1] - web[even][0]) / (t[even][-1] - t[even][0])
    thickness = depths[-1] / (burnout - start)
    return balance, absolute[even].mean(), thickness, absolute[inside].mean(), velocity


def whole(folder, row):
    raw = open(os.path.join(folder, row.trace), "rb").read()
    hashlib.sha256(raw).hexdigest()
    trace = pd.read_csv(io.BytesIO(raw))
    t = trace["time [s]"].to_numpy()
    p = trace["pressure [MPa]"].to_numpy()
    intervals = np.diff(t)
    if not (intervals > 0).all() or not np.isfinite(p).all():
        raise ValueError(row.trace)
    gaps = np.count_nonzero(intervals > 1.5 * np.median(intervals))
    clipped = np.count_nonzero(p == p.max()) > 2
    usual = ndimage.median_filter(p, 9, mode="nearest")
    off = np.abs(p - usual)
    extent = usual.max() - usual.min()
    bend = p[1:-1] - 0.5 * (p[:-2] + p[2:])
    noise = MAD * np.median(np.abs(bend)) / np.sqrt(1.5)
    spikes = (off > 7 * max(MAD * np.median(off), noise)) & (off > 0.01 * extent)
    p = np.where(spikes & (np.abs(np.roll(p, 3) - np.roll(p, -3)) < 0.5 * off), usual, p)
    p = without_mains(t, p, extent)
    smooth = ndimage.uniform_filter1d(p, max(3, len(p) // 1000), mode="nearest")
    working = np.flatnonzero(smooth > np.quantile(smooth, 0.05) + 0.1 * extent)
    rise, fall = working[0], working[-1]
    quiet = p[: int(0.9 * rise)]
    tail = p[fall + (len(p) - fall) // 3 :]
    zero, drift = np.median(quiet), np.median(tail) - np.median(quiet)
    if abs(drift) < 5 * np.hypot(MAD * np.median(np.abs(quiet - zero)), noise) / np.sqrt(len(tail)):
        drift = 0.0
    p = p - zero - drift * np.clip((t - t[rise]) / (t[fall] - t[rise]), 0, 1)
    half = max(1, len(p) // 800)
    smooth = ndimage.uniform_filter1d(ndimage.uniform_filter1d(p, half, mode="nearest"), half, mode="nearest")
    top = smooth.max()
    level = 0.1 * top
    begin = np.argmax(smooth > level)
    end = len(p) - np.argmax(smooth[::-1] > level) - 1
    slope = np.gradient(smooth, t)
    steepest = begin - half + int(np.argmax(slope[max(0, begin - half) : begin + 8 * half]))
    tangent = t[steepest] - smooth[steepest] / slope[steepest]
    late = slice(begin + int(0.5 * (end - begin)), begin + int(0.85 * (end - begin)))
    plateau = np.polyfit(t[late], smooth[late], 1)
    knee = late.stop + int(np.argmin(slope[late.stop : end + 1]))
    falling = np.array([slope[knee], smooth[knee] - slope[knee] * t[knee]])
    meet = (falling[1] - plateau[1]) / (plateau[0] - falling[0])
    scale = top / (t[end] - t[begin])
    bisecting = np.tan(0.5 * (np.arctan(plateau[0] / scale) + np.arctan(falling[0] / scale)) + np.pi / 2) * scale
    line = np.polyval(plateau, meet) + bisecting * (t[late.stop : end] - meet)
    bisector = t[late.stop + int(np.argmin(np.abs(line - smooth[late.stop : end])))]
    curvature = t[late.stop + int(np.argmin(np.gradient(slope, t)[late.stop : knee + 1]))]
    cut = slice(max(0, begin - 20 * half), min(len(p), end + 20 * half))
    times, absolute = t[cut], p[cut] + AMBIENT
    events = [t[begin], bisector, t[begin], t[end]]
    inputs = [row.outer, row.core, row.length, row.throat, row.mass, DENSITY]
    best = np.array(rates(times, absolute, events, *inputs, row.segments))
    variance = np.zeros(len(best))
    for index, std in enumerate([0.05, 0.05, 0.1, 0.02, 0.005 * row.mass, 10.0]):
        moved = list(inputs)
        moved[index] += std
        variance += (np.array(rates(times, absolute, events, *moved, row.segments)) - best) ** 2
    for change in (absolute * (1 + 0.005), absolute + 0.5 * abs(drift) + noise / np.sqrt(len(quiet))):
        variance += (np.array(rates(times, change, events, *inputs, row.segments)) - best) ** 2
    for index, std in ((0, abs(tangent - t[begin]) / np.sqrt(12)), (1, abs(bisector - curvature) / np.sqrt(12))):
        moved = list(events)
        moved[index] += std
        variance += (np.array(rates(times, absolute, moved, *inputs, row.segments)) - best) ** 2
    keep = slice(None, None, max(1, len(times) // 600))
    np.column_stack((times[keep], absolute[keep]))
    return best[1], best[0], np.sqrt(variance[0]), gaps, clipped, spikes.sum(), best[4]


def fitted(x, y):
    (a, n), _ = optimize.curve_fit(lambda x, a, n: a * x**n, x, y, p0=(y.mean(), 0.4), sigma=y)
    residual = np.log(y / (a * x**n))
    u, v = np.log(x), np.log(y)
    level = np.sum(residual**2) * (1 + stats.t.ppf(0.975, len(y) - 2) ** 2 / (len(y) - 2))
    excess = lambda n: np.sum((v - n * u - np.mean(v - n * u)) ** 2) - level
    lower = optimize.brentq(excess, n - 1, n)
    upper = optimize.brentq(excess, n, n + 1)
    hinges = []
    for knot in np.quantile(u, np.linspace(0.1, 0.9, 60)):
        design = np.column_stack((np.ones_like(u), u, np.maximum(0, u - knot)))
        hinges.append(np.sum((v - design @ np.linalg.lstsq(design, v, rcond=None)[0]) ** 2))
    gain = (np.sum(residual**2) - min(hinges)) / min(hinges) * (len(y) - 4) / 2
    left_out = []
    for i in range(len(y)):
        others = np.delete(np.arange(len(y)), i)
        slope, offset = np.polyfit(u[others], v[others], 1)
        left_out.append(v[i] - slope * u[i] - offset)
    return a, n, lower, upper, stats.f.sf(gain, 2, len(y) - 4), np.std(left_out)


def main():
    folder = sys.argv[1]
    log = pd.read_csv(os.path.join(folder, "firings.csv"))
    log = log.rename(
        columns={
            "outer_diameter [mm]": "outer",
            "core_diameter [mm]": "core",
            "segment_length [mm]": "length",
            "throat_diameter [mm]": "throat",
            "propellant_mass [g]": "mass",
        }
    )
    reduce = outline if sys.argv[2:] == ["outline"] else whole
    points = [reduce(folder, row) for row in log.itertuples(index=False)]
    x = np.array([point[0] for point in points])
    y = np.array([point[1] for point in points])
    a, n, lower, upper, chance, left_out = fitted(x, y)
    print(f"a = {a:.4f} mm/s at 1 MPa, n = {n:.4f} ({lower:.4f} to {upper:.4f}, 95 %, profile), {len(y)} firings")
    print(f"one law against two: p = {chance:.2g}; left out and foretold: {100 * left_out:.2f} %")


main()
