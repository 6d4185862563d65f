#!/usr/bin/env python3
# SPDX-License-Identifier: EPL-2.0
"""Writes the small NumPy files that the tests of the reader of arrays expect. Usage: make_numpy.py FOLDER

Invented values: row i of channel k is (i - 2) * (k + 1) / 4, exact in every type. Made with NumPy 2.4.6.
The same files come out of every run: NumPy gives the entries of an archive a fixed date.
"""
import sys
from pathlib import Path

import numpy as np
from numpy.lib import format as npy_format

ROWS, CHANNELS = 6, 2


def values(dtype):
    rows = np.arange(ROWS).reshape(-1, 1) - 2
    scale = (np.arange(CHANNELS) + 1) / (4 if np.dtype(dtype).kind == "f" else 1)
    table = rows * scale
    return (np.abs(table) if np.dtype(dtype).kind == "u" else table).astype(dtype)


def main(folder):
    for dtype in ["<f2", "<f4", "<f8", ">f4", ">f8", "<i1", "<i2", ">i2", "<i4", ">i4", "<i8", "u1", "<u2", ">u4", "<u8"]:
        name = dtype.replace("<", "le-").replace(">", "be-")
        np.save(folder / f"rows-{name}.npy", values(dtype))
    np.save(folder / "one.npy", values("<f8")[:, 0])
    np.save(folder / "bool.npy", values("<f8")[:, 0] > 0)
    np.save(folder / "fortran.npy", np.asfortranarray(values("<f8")))
    np.save(folder / "columns.npy", np.ascontiguousarray(values("<f4").T))
    np.save(folder / "fortran-columns.npy", np.asfortranarray(values("<f4").T))
    for version in [(2, 0), (3, 0)]:
        with open(folder / f"version-{version[0]}.npy", "wb") as file:
            npy_format.write_array(file, values("<f8"), version=version)
    time = np.arange(ROWS) * 0.5 - 1
    np.savez(folder / "named.npz", **{"time (ms)": time, "signal1": values("<f4")[:, 0], "signal2 (mV)": values("<i2")[:, 1]})
    np.savez_compressed(folder / "packed.npz", fs=np.float64(2000), pair=values("<f8"))
    np.save(folder / "complex.npy", np.zeros(4, complex))
    np.save(folder / "cube.npy", np.zeros((2, 3, 4)))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
