#!/usr/bin/env python3
# SPDX-License-Identifier: EPL-2.0
"""Writes the small MAT-files that the tests of the MAT reader expect. Usage: make_mat.py FOLDER

Made with SciPy 1.17.1 and NumPy 2.4.6. Invented values: sample i of channel k is (i - 2) * (k + 1) / 4, exact in every
type. The header, which would carry the date, is replaced, so the same files come out of every run.
"""
import io
import sys
from pathlib import Path

import numpy as np
from scipy.io import savemat
from scipy.sparse import csc_matrix

ROWS, RATE = 240, 10_000.0


def channel(k, dtype="f8"):
    return ((np.arange(ROWS) - 2) * (k + 1) / 4).astype(dtype)


def counts(k, dtype):
    return np.abs((np.arange(ROWS) - 2) * (k + 1)).astype(dtype)


def save(path, variables, **options):
    file = io.BytesIO()
    savemat(file, variables, **options)
    head = b"MATLAB 5.0 MAT-file, made by make_mat.py".ljust(116)
    level_5 = options.get("format", "5") == "5"
    path.write_bytes(head + file.getvalue()[len(head):] if level_5 else file.getvalue())


def swapped(path):
    """The simplest file of the other byte order, by hand: one row of doubles and one single number."""
    def variable(name, values):
        name = name.encode()
        body = np.array([6, 8, 6, 0], ">i4").tobytes()
        body += np.array([5, 8, 1, len(values)], ">i4").tobytes()
        body += np.array([1, len(name)], ">i4").tobytes() + name.ljust(-(-len(name) // 8) * 8, b"\0")
        body += np.array([9, 8 * len(values)], ">i4").tobytes() + np.asarray(values, ">f8").tobytes()
        return np.array([14, len(body)], ">i4").tobytes() + body

    head = b"MATLAB 5.0 MAT-file, made by make_mat.py".ljust(116) + bytes(8) + b"\x01\x00MI"
    path.write_bytes(head + variable("signal1", channel(0)) + variable("Fs", [RATE]))


def main(folder):
    time = np.arange(ROWS) / RATE
    save(folder / "columns.mat", {"t": time, "signal1": channel(0), "signal2": channel(1, "f4")}, oned_as="column")
    save(folder / "rows.mat", {"t": time, "signal1": channel(0), "signal2": channel(1, "f4")}, oned_as="row",
         do_compression=True)
    save(folder / "matrix.mat", {"data": np.stack([channel(0), channel(1), channel(2)], axis=1), "dt": 0.1,
                                 "dt_unit": "ms", "tstart": -1.0, "data_units": "mV"}, do_compression=True)
    inner = {"signal1": counts(0, "i2"), "scale": 0.5, "unit": "V"}
    whole = {"u1": counts(0, "u1"), "i4": counts(1, "i4"), "u8": counts(2, "u8"), "gate": counts(0, "i2") > 5}
    save(folder / "structs.mat", {"run": {"Fs": RATE, "channel": inner, "more": whole}}, do_compression=True)
    cell = np.empty((1, 2), object)
    cell[0, 0], cell[0, 1] = channel(0), "text"
    save(folder / "odd.mat", {
        "signal1": channel(0), "fs": RATE, "complex": channel(0) + 1j, "cells": cell, "sparse": csc_matrix(np.eye(4)),
        "cube": np.zeros((2, 3, 4)), "structs": np.zeros((1, 3), [("a", "O")]), "note": "made by hand", "empty": np.zeros((0, 0)),
    }, do_compression=True)
    save(folder / "level-4.mat", {"signal1": channel(0)}, format="4")
    swapped(folder / "swapped.mat")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
