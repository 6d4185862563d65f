#!/usr/bin/env python3
# SPDX-License-Identifier: EPL-2.0
"""Measures captures independently of the product, with NumPy and SciPy, and writes what it finds as JSON.

measure.py FOLDER_OF_CSV EXPECTED_JSON; started by the script `outside` in the folder above.

Definitions as in IEEE Std 181-2011, in another way than the product's wherever there is one:
  levels        histogram of all samples, split in the middle of its two fullest halves; each level is the mean of the samples
                of its state that lie further than three transition durations from any crossing
  crossings     a Schmitt trigger at 50 % -+ max(10 %, 4 sigma); the instant is linearly interpolated, but where the noise is
                above 1 % of the swing and six samples or more lie between 30 and 70 % a straight line fitted to these
  transition    10 to 90 % of the mean edge of a direction: all edges laid over each other at their 50 % instants, so that
                their samples fill each other's spaces (scipy.interpolate.PchipInterpolator through the means of bins)
  mean, RMS     integral of the straight lines between the samples, from the first to the last active edge
  jitter        numpy.std(ddof=1) of the periods; of their differences for cycle to cycle
  lag-1         sum (x_i - m)(x_i+1 - m) / sum (x_i - m)^2 of the periods, as NIST StRD defines it
"""
import csv
import hashlib
import json
import pathlib
import platform
import sys

import numpy as np
import scipy
from scipy import integrate, interpolate

ACTIVE_LOW = {"active-low"}

# standard deviation of the noise as a share of the swing from which a straight line tells an instant better than two samples
NOISY = 0.01


def read(path):
    with open(path, newline="") as file:
        rows = list(csv.reader(file))[1:]
    table = np.array(rows, dtype=float)
    return table[:, 0], table[:, 1]


def rough_levels(v):
    counts, edges = np.histogram(v, bins=256)
    middle = (v.min() + v.max()) / 2
    centres = (edges[:-1] + edges[1:]) / 2
    low = centres[np.argmax(np.where(centres < middle, counts, 0))]
    high = centres[np.argmax(np.where(centres >= middle, counts, 0))]
    return low, high


def switches(v, low, high, sigma):
    """Index of the first sample of each stay in a state, and whether the state is high."""
    middle, half = (low + high) / 2, max(0.1 * (high - low), 4 * sigma)
    state = np.zeros(len(v), dtype=int)
    state[v >= middle + half] = 1
    state[v <= middle - half] = -1
    known = np.flatnonzero(state)
    change = known[1:][state[known[1:]] != state[known[:-1]]]
    return change, state[change] > 0


def windows(v, at, low, high, rising):
    """First and last sample of the stretch around a switch in which the signal is between 10 and 90 %."""
    lower, upper = low + 0.1 * (high - low), low + 0.9 * (high - low)
    first = at
    while first > 0 and (v[first - 1] > lower if rising else v[first - 1] < upper):
        first -= 1
    last = at
    while last < len(v) - 1 and (v[last] < upper if rising else v[last] > lower):
        last += 1
    return max(first - 1, 0), last


def instant(t, v, at, low, high, rising, noisy):
    middle, swing = (low + high) / 2, high - low
    first, last = windows(v, at, low, high, rising)
    part = slice(first, last + 1)
    inner = np.abs(v[part] - middle) <= 0.2 * swing
    if noisy and inner.sum() >= 6:
        x, y = t[part][inner], v[part][inner]
        slope, offset = np.polyfit(x - x[0], y, 1)
        return x[0] + (middle - offset) / slope
    sign = 1 if rising else -1
    below = sign * (v[part] - middle) < 0
    i = first + np.flatnonzero(below[:-1] & ~below[1:])[-1]
    return t[i] + (middle - v[i]) / (v[i + 1] - v[i]) * (t[i + 1] - t[i])


def transition(t, v, instants, low, high, rising, reach):
    """Duration from 10 to 90 % of the mean edge."""
    offsets, shares = [], []
    for crossing in instants:
        near = (t > crossing - reach) & (t < crossing + reach)
        offsets.append(t[near] - crossing)
        shares.append((v[near] - low) / (high - low))
    x, y = np.concatenate(offsets), np.concatenate(shares)
    bins = np.linspace(-reach, reach, 161)
    index = np.digitize(x, bins)
    filled = [k for k in range(1, len(bins)) if np.any(index == k)]
    means_x = np.array([x[index == k].mean() for k in filled])
    means_y = np.array([y[index == k].mean() for k in filled])
    if not rising:
        means_y = 1 - means_y
    curve = interpolate.PchipInterpolator(means_x, means_y)
    fine = np.linspace(means_x[0], means_x[-1], 20001)
    values = curve(fine)
    middle = np.searchsorted(fine, 0)
    left = fine[np.flatnonzero(values[:middle] <= 0.1)[-1]]
    right = fine[middle + np.flatnonzero(values[middle:] >= 0.9)[0]]
    return right - left


def settled(t, instants, margin):
    """Which samples lie further than a margin from every crossing."""
    nearest = np.searchsorted(instants, t)
    before = np.abs(t - instants[np.clip(nearest - 1, 0, len(instants) - 1)])
    after = np.abs(t - instants[np.clip(nearest, 0, len(instants) - 1)])
    return np.minimum(before, after) > margin


def levels(t, v, instants, margin, low, high):
    middle = (low + high) / 2
    quiet = settled(t, instants, margin)
    lows, highs = v[quiet & (v < middle)], v[quiet & (v > middle)]
    return lows.mean(), highs.mean(), max(lows.std(ddof=1), highs.std(ddof=1))


def integral(t, v, begin, end, squared):
    inside = (t > begin) & (t < end)
    x = np.concatenate([[begin], t[inside], [end]])
    y = np.interp(x, t, v)
    if not squared:
        return integrate.trapezoid(y, x)
    return np.sum((y[:-1] ** 2 + y[:-1] * y[1:] + y[1:] ** 2) / 3 * np.diff(x))


def measure(name, t, v):
    low, high = rough_levels(v)
    sigma = np.std(v[np.abs(v - low) < 0.2 * (high - low)])
    reach = np.inf
    for _ in range(4):
        at, rising = switches(v, low, high, sigma)
        keep = (at > 0) & (at < len(v) - 1)
        instants = np.array([instant(t, v, i, low, high, up, sigma > NOISY * (high - low)) for i, up in zip(at[keep], rising[keep])])
        rising = rising[keep]
        shortest = np.diff(instants).min()
        reach = min(reach, 0.9 * shortest)
        rise = transition(t, v, instants[rising][1:-1], low, high, True, reach)
        fall = transition(t, v, instants[~rising][1:-1], low, high, False, reach)
        reach = 2 * max(rise, fall)
        margin = min(3 * max(rise, fall), 0.45 * shortest)
        low, high, sigma = levels(t, v, instants, margin, low, high)
    active = rising if name not in ACTIVE_LOW else ~rising
    starts = instants[active]
    ends = np.array([instants[~active][np.searchsorted(instants[~active], start)] for start in starts[:-1]])
    periods = np.diff(starts)
    widths = ends - starts[:-1]
    duties = 100 * widths / periods
    mean = periods.mean()
    total = starts[-1] - starts[0]
    return {
        "lowLevel": low,
        "highLevel": high,
        "noise": sigma,
        "cycles": len(periods),
        "frequency": len(periods) / total,
        "period": mean,
        "period.sd": periods.std(ddof=1),
        "duty": duties.mean(),
        "duty.sd": duties.std(ddof=1),
        "pulse-duration": widths.mean(),
        "transition.rise": rise,
        "transition.fall": fall,
        "mean-voltage": integral(t, v, starts[0], starts[-1], False) / total,
        "rms-voltage": np.sqrt(integral(t, v, starts[0], starts[-1], True) / total),
        "period-jitter.rms": periods.std(ddof=1),
        "period-jitter.peak-to-peak": np.ptp(periods),
        "cycle-jitter.rms": np.diff(periods).std(ddof=1),
        "period.lag-1": np.sum((periods[:-1] - mean) * (periods[1:] - mean)) / np.sum((periods - mean) ** 2),
        "periods": [float("%.9g" % x) for x in periods],
        "duties": [float("%.8g" % x) for x in duties],
    }


def main(folder, target):
    captures = {}
    for path in sorted(pathlib.Path(folder).glob("*.csv")):
        found = measure(path.stem, *read(path))
        for key, value in found.items():
            if isinstance(value, float):
                found[key] = float("%.10g" % value)
        captures[path.stem] = {"sha256": hashlib.sha256(path.read_bytes()).hexdigest(), **found}
    result = {
        "tool": "releng/reference/outside/measure.py",
        "python": platform.python_version(),
        "numpy": np.__version__,
        "scipy": scipy.__version__,
        "captures": captures,
    }
    pathlib.Path(target).write_text(json.dumps(result, indent=1) + "\n")


if __name__ == "__main__":
    main(*sys.argv[1:])
