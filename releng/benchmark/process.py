#!/usr/bin/env python3
# SPDX-License-Identifier: EPL-2.0
"""Whole processes side by side: `dutywright measure` on a store, and a script as one writes it in a notebook on a .npy file.

    python3 releng/benchmark/process.py [SAMPLES]

Needs NumPy. Both start from nothing and read the same samples from the page cache, in turn, five times each; the table holds
medians of processor time (all threads, start of the machine included) and their ratio. The script finds levels, edges
with hysteresis, interpolated instants, period, duty and mean of each cycle and a min/max overview; the product does all of
its work, uncertainties and events included, so the ratio says what a user waits for and not who is better at one job.
"""
import os
import resource
import statistics
import subprocess
import sys
import tempfile

VOLTS_A_COUNT = 5.0 / 32768
RUNS = 5


def make(path, rate, samples, kind):
    import numpy as np

    random = np.random.default_rng(20261125)
    parts = np.lib.format.open_memmap(path, mode="w+", dtype=kind, shape=(samples,))
    size = 1 << 20
    for first in range(0, samples, size):
        n = np.arange(first, min(samples, first + size))
        phase = n * (200 / rate)
        duty = 0.1 + 0.4 * (0.5 + 0.5 * np.sin(phase * 0.01))
        counts = np.where(phase % 1 < duty, 30000, 1000) + np.rint(random.normal(0, 580, len(n)))
        counts = np.clip(counts, -32768, 32767)
        parts[first : first + len(n)] = counts if kind == "<i2" else counts * VOLTS_A_COUNT
    parts.flush()


def notebook(path, rate):
    import numpy as np

    raw = np.load(path)
    v = raw * VOLTS_A_COUNT if raw.dtype.kind == "i" else raw.astype(float)
    counts, borders = np.histogram(v, bins=1024)
    centres = (borders[1:] + borders[:-1]) / 2
    middle = (v.min() + v.max()) / 2
    below, above = centres < middle, centres >= middle
    low = centres[below][counts[below].argmax()]
    high = centres[above][counts[above].argmax()]
    swing = high - low
    told = np.where(v >= low + 0.6 * swing, 1, np.where(v <= low + 0.4 * swing, 0, -1)).astype(np.int8)
    known = np.where(told >= 0, np.arange(len(v)), 0)
    state = told[np.maximum.accumulate(known)]
    edges = np.flatnonzero(np.diff(state)) + 1
    crossing = np.flatnonzero((v[:-1] < low + swing / 2) != (v[1:] < low + swing / 2))
    last = crossing[np.searchsorted(crossing, edges, side="left") - 1]
    share = (low + swing / 2 - v[last]) / (v[last + 1] - v[last])
    instant = (last + share) / rate
    rising = state[edges] == 1
    rise, fall = instant[rising], instant[~rising]
    fall = fall[fall > rise[0]]
    period = np.diff(rise)
    number = min(len(period), len(fall))
    duty = (fall[:number] - rise[:number]) / period[:number]
    sums = np.concatenate(([0], np.cumsum(v)))
    starts = last[rising]
    mean = (sums[starts[1:]] - sums[starts[:-1]]) / np.diff(starts)
    whole = v[: len(v) // 256 * 256].reshape(-1, 256)
    overview = whole.min(axis=1), whole.max(axis=1)
    print(len(period), np.median(period), duty.mean(), mean.mean(), len(overview[0]))


def seconds(command):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main():
    samples = int(sys.argv[1]) if len(sys.argv) > 1 else 50_000_000
    product = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "dutywright")
    print("| recording | samples | notebook, s | dutywright measure, s | ratio |")
    print("| --- | --- | --- | --- | --- |")
    for kind, name in (("<i2", "int16"), ("<f4", "float32")):
        for rate, density in ((1_000_000, "sparse"), (20_000, "dense")):
            with tempfile.TemporaryDirectory() as folder:
                array = os.path.join(folder, "capture.npy")
                store = os.path.join(folder, "capture.arrow")
                make(array, rate, samples, kind)
                subprocess.run(
                    ["bash", product, "convert", array, "--sample-rate", str(rate), "--to", store],
                    check=True,
                    stdout=subprocess.DEVNULL,
                    stderr=subprocess.DEVNULL,
                )
                times = [
                    (
                        seconds([sys.executable, __file__, "notebook", array, str(rate)]),
                        seconds(["bash", product, "measure", store]),
                    )
                    for _ in range(RUNS)
                ]
                script = statistics.median(one for one, _ in times)
                ours = statistics.median(other for _, other in times)
                ratio = statistics.median(one / other for one, other in times)
                print(f"| {name} {density} | {samples} | {script:.2f} | {ours:.2f} | {ratio:.2f} |", flush=True)


if __name__ == "__main__":
    if len(sys.argv) > 1 and sys.argv[1] == "notebook":
        notebook(sys.argv[2], float(sys.argv[3]))
    else:
        main()
