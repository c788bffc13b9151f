#!/usr/bin/env python3
"""Campaigns of ten motors from a model that shares no line and no author's choice with Burnlaw's own simulator.

usage: independent_motors.py        writes independent-motors.zip beside itself (NumPy; the same bytes each time)

Sources: conservation of mass and the perfect gas in a chamber of even pressure, as any textbook has them (G. P. Sutton and
O. Biblarz, Rocket Propulsion Elements, chapter 12); flow of a perfect gas through a throat, choked or not (the same,
chapter 3). Integrated by Euler steps of 0.2 ms. The truth: r = 4.5 mm/s (P / 1 MPa)^0.35 in campaigns 1 and 2, and 1.7 mm/s
(P / 1 MPa)^0.45 in campaign 3, whose motors stand at 25 kPa gauge for half a minute behind an igniter's spike ten times as
high; c* = 900 m/s.

Every campaign has at once what nobody tells the reduction: an igniter of 1 % of the propellant, a flame that takes 0.12 s to
spread, cores up to 1.2 mm off the axis (the port's outline is followed all around), a throat that wears by 1.5 %, 2 % of
the propellant left as slag, a sensor with a gain error of 0.5 %, a lag of 4 ms, a zero that drifts by 1 % of the peak with
the heat, noise of 5 kPa and steps of 1 kPa, grains read to 0.1 mm, and firings that scatter by 1.5 % in rate.
"""
import io
import zipfile
from pathlib import Path

import numpy as np

COEFFICIENT, EXPONENT = 4.5e-3, 0.35
DENSITY, VELOCITY, HEATS, TEMPERATURE, AMBIENT = 1800.0, 900.0, 1.13, 1600.0, 101325.0
SLOW = (1.7e-3, 0.45, [11.5, 11.7, 11.9, 12.1, 12.3, 12.5, 12.7, 12.9, 13.0, 11.6])
THROATS = [12.0, 11.0, 10.2, 9.6, 9.0, 8.5, 8.1, 12.5, 10.6, 9.3]
SEGMENTS, IGNITER, SPREAD, IGNITER_TIME, WEAR, SLAG = 2, 0.01, 0.12, 0.05, 0.015, 0.02
STEP = 2e-4
AROUND = np.linspace(0, 2 * np.pi, 180, endpoint=False)


def surface(web, outer, core, length, off):
    """Burning surface of one segment whose ends burn, its bore off the axis [m2]."""
    rest, radius = length - 2 * web, core / 2 + web
    if rest <= 0:
        return 0.0
    edge = off * np.cos(AROUND) + np.sqrt(np.maximum(radius**2 - (off * np.sin(AROUND)) ** 2, 0))
    alive = np.mean(edge < outer / 2)
    port = np.pi * np.mean(np.minimum(edge, outer / 2) ** 2)
    return 2 * np.pi * radius * alive * rest + 2 * (np.pi / 4 * outer**2 - port)


def burn(throat, outer, core, length, off, faster, coefficient=COEFFICIENT, exponent=EXPONENT):
    """Time [s] and absolute pressure [Pa] until the chamber is empty."""
    ratio = 2 / (HEATS + 1)
    gas = (VELOCITY * np.sqrt(HEATS) * ratio ** ((HEATS + 1) / (2 * (HEATS - 1)))) ** 2  # R T
    grain = SEGMENTS * np.pi / 4 * (outer**2 - core**2) * length
    chamber = np.pi / 4 * (outer + 0.004) ** 2 * (SEGMENTS * length + 0.03)
    pressure, web, time, burned, times, pressures = AMBIENT, 0.0, 0.0, 0.0, [], []
    while True:
        lit = min(1.0, 0.1 + 0.9 * time / SPREAD)
        area = SEGMENTS * surface(web, outer, core, length, off) * lit
        rate = faster * coefficient * (pressure / 1e6) ** exponent
        igniter = IGNITER * grain * DENSITY / IGNITER_TIME * np.exp(-time / IGNITER_TIME)
        hole = np.pi / 4 * (throat * (1 + WEAR * min(1, time / 3))) ** 2
        over = pressure / AMBIENT
        if over > (1 / ratio) ** (HEATS / (HEATS - 1)):
            flow = pressure * hole / VELOCITY
        elif over > 1:
            flow = hole * pressure / np.sqrt(gas) * np.sqrt(
                2 * HEATS / (HEATS - 1) * (over ** (-2 / HEATS) - over ** (-(HEATS + 1) / HEATS)))
        else:
            flow = 0.0
        made = DENSITY * rate * area * (1 - SLAG)
        slope = (gas * (made + igniter - flow) - pressure * rate * area) / (chamber - grain + burned)
        times.append(time)
        pressures.append(pressure)
        pressure = max(AMBIENT, pressure + slope * STEP)
        web += rate * STEP * lit
        burned += rate * area * STEP
        time += STEP
        if area == 0 and pressure < 1.002 * AMBIENT:
            return np.array(times), np.array(pressures), grain * DENSITY


def record(times, pressures, gain, random, interval=0.002, noise=0.05, longest=1e9):
    """What a sensor and a logger of 500 samples a second make of it: ms and bar gauge, decimal commas."""
    time = np.arange(-0.8, min(longest, times[-1] + 1.5), interval)
    true = np.interp(time, times, pressures, left=AMBIENT, right=AMBIENT)
    share, lagged = 1 - np.exp(-interval / 0.004), true.copy()
    for k in range(1, len(time)):
        lagged[k] = lagged[k - 1] + (true[k] - lagged[k - 1]) * share
    reading = (lagged - AMBIENT) * gain / 1e5 + noise * random.normal(size=len(time))
    reading += 0.01 * reading.max() * (1 - np.exp(-np.maximum(time, 0) / 4))
    text = io.StringIO("Zeit (ms);Druck (bar)\n")
    text.seek(0, io.SEEK_END)
    for t, p in zip(time, reading):
        text.write(f"{1000 * (t + 0.8):.0f};{p:.2f}\n".replace(".", ","))
    return text.getvalue()


def campaign(seed, slow=False):
    """Files of a campaign, by path. Slow motors: a logger of 100 samples a second, noise of 2 kPa."""
    law, throats = (SLOW[:2], SLOW[2]) if slow else ((COEFFICIENT, EXPONENT), THROATS)
    logger = (0.01, 0.02, 24) if slow else ()
    random = np.random.default_rng(seed)
    gain = 1 + 0.005 * random.normal()
    log = ["firing,formulation,trace,grain,segments,core diameter [mm],outer diameter [mm],segment length [mm],"
           "throat diameter [mm],propellant mass [g]"]
    files = {"campaign.yaml": "format: burnlaw-campaign/1\ntitle: Motors of another model (invented)\n"
                              "trace:\n  pressure_kind: gauge\nformulations:\n  sugar:\n    density: 1.80 g/cm3\n"}
    for number, throat in enumerate(throats, 1):
        off, faster = random.uniform(0, 0.0012), 1 + 0.015 * random.normal()
        outer, core, length = (size + 5e-5 * random.normal() for size in (0.038, 0.014, 0.062))
        times, pressures, mass = burn(throat / 1e3, outer, core, length, off, faster, *law)
        files[f"traces/m{number}.csv"] = record(times, pressures, gain, random, *logger)
        log.append(f"M{number},sugar,traces/m{number}.csv,bates,{SEGMENTS},{1e3 * core:.1f},{1e3 * outer:.1f},"
                   f"{1e3 * length:.1f},{throat:.2f},{1e3 * mass:.1f}")
    files["firings.csv"] = "\n".join(log) + "\n"
    return files


def main():
    with zipfile.ZipFile(Path(__file__).with_name("independent-motors.zip"), "w", zipfile.ZIP_DEFLATED, compresslevel=9) as archive:
        for seed in (1, 2, 3):
            for path, text in campaign(seed, slow=seed == 3).items():
                entry = zipfile.ZipInfo(f"{seed}/{path}", (2026, 11, 30, 0, 0, 0))
                entry.compress_type = zipfile.ZIP_DEFLATED
                archive.writestr(entry, text)


if __name__ == "__main__":
    main()
