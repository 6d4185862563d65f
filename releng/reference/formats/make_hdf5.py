#!/usr/bin/env python3
# SPDX-License-Identifier: EPL-2.0
"""Writes the small HDF5 files and MAT-files of level 7.3 that the tests of the HDF5 reader expect.

Usage: make_hdf5.py FOLDER. Made with h5py 3.16.0 (HDF5 2.0.0) and NumPy 2.4.6; h5py comes by "pip install h5py".
The MAT-files are written with h5py as the program that defines them lays them out: a user block of 512 bytes that names
the level, transposed dimensions, attributes MATLAB_class. Invented values: sample i of channel k is (i - 2) * (k + 1) / 4,
exact in every type.
"""
import sys
from pathlib import Path

import h5py
import numpy as np

ROWS, RATE = 240, 10_000.0


def channel(k, dtype="f8"):
    values = (np.arange(ROWS) - 2) * (k + 1) / 4
    return values.astype(dtype)


def counts(k, dtype="i2"):
    return ((np.arange(ROWS) - 2) * (k + 1)).astype(dtype)


def instrument(folder):
    """One array a channel in a group, with the array of time and units as attributes; all three old ways of storing."""
    with h5py.File(folder / "channels.h5", "w", libver="earliest") as file:
        group = file.create_group("Waveforms")
        group.create_dataset("time", data=np.arange(ROWS) / RATE * 1000).attrs["units"] = "ms"
        group.create_dataset("signal1", data=channel(0), chunks=(64,), compression="gzip", shuffle=True)
        group.create_dataset("signal2", data=channel(1, ">f4"), chunks=(100,)).attrs["units"] = "mV"
        file["Waveforms/signal1"].attrs["unit"] = np.bytes_("V")
        file.create_dataset("settings", data="made by hand")
        file.create_dataset("curve", data=np.linspace(0, 1, 17))


def latest(folder):
    """The layout of HDF5 1.10 to 1.14: every index of chunks, one a dataset, and the rate as attribute of the group."""
    with h5py.File(folder / "indexes.h5", "w", libver="v110") as file:
        group = file.create_group("record")
        group.attrs["sample_rate"] = RATE
        group.attrs["t0"] = -0.5
        group.create_dataset("single", data=channel(0), chunks=(ROWS,), compression="gzip")
        group.create_dataset("fixed", data=channel(1, "f4"), chunks=(64,), fletcher32=True)
        group.create_dataset("extensible", data=channel(2), chunks=(50,), maxshape=(None,), compression="lzf")
        group.create_dataset("plain", data=channel(3, "f2"))
        table = np.stack([channel(4), channel(5)], axis=1)
        group.create_dataset("tree", data=table, chunks=(70, 1), maxshape=(None, None), shuffle=True, compression=9)


def converter(folder):
    """Counts of a converter with scale and offset, the step as a number with a unit, and truth values."""
    with h5py.File(folder / "counts.h5", "w") as file:
        table = np.stack([counts(0), counts(1)])
        data = file.create_dataset("adc", data=table, chunks=(1, 128), compression="gzip", shuffle=True)
        data.attrs["scale_factor"] = np.float64(0.25)
        data.attrs["add_offset"] = np.float32(1)
        data.attrs["units"] = "V"
        data.attrs["_FillValue"] = np.int16(7)
        file.create_dataset("gate", data=counts(0) > 0)
        file.create_dataset("dt", data=np.float32(100)).attrs["units"] = "us"


def odd(folder):
    """What is left out, beside one channel that is not; links that lead round and out."""
    with h5py.File(folder / "odd.h5", "w", track_order=True) as file:
        file.create_dataset("signal1", data=channel(0))
        file.create_dataset("fs", data=RATE)
        file.create_dataset("complex", data=channel(0) + 1j)
        file.create_dataset("table", data=np.zeros(4, [("a", "f8"), ("b", "i4"), ("c", "i4")]))
        file.create_dataset("names", data=["a", "b"])
        file.create_dataset("cube", data=np.zeros((2, 3, 4)))
        file["again"] = file["signal1"]
        file["group/round"] = file["/"]
        file["soft"] = h5py.SoftLink("/signal1")
        file["outside"] = h5py.ExternalLink("elsewhere.h5", "/signal1")


def unfinished(folder):
    """Room for more than was recorded: the last chunks were never written."""
    with h5py.File(folder / "unfinished.h5", "w") as file:
        data = file.create_dataset("signal1", shape=(10 * ROWS,), chunks=(100,), dtype="f4")
        data[:ROWS] = channel(0, "f4")
        file.attrs["fs_kHz"] = RATE / 1000


def newest(folder):
    """What HDF5 2.0 writes if it is asked for its newest layout, which older programs do not know."""
    with h5py.File(folder / "newest.h5", "w", libver="latest") as file:
        file.create_dataset("signal1", data=channel(0), chunks=(100,), compression="gzip")
        file.create_dataset("signal2", data=channel(1))
        file.attrs["fs"] = RATE


def many(folder):
    """More objects in a group, and attributes of one, than fit a header."""
    with h5py.File(folder / "many.h5", "w", libver="v110") as file:
        for k in range(30):
            file.create_dataset(f"ch{k}/data", data=channel(k)[:12])
            for i in range(12):
                file[f"ch{k}/data"].attrs[f"note{i}"] = i
        file.attrs["SamplingRate"] = RATE


def matlab(folder):
    """A MAT-file of level 7.3: variables, a struct, text, a cell."""
    def variable(group, name, values, of_class):
        data = group.create_dataset(name, data=np.atleast_2d(values))
        data.attrs["MATLAB_class"] = np.bytes_(of_class)
        return data

    path = folder / "level-7.3.mat"
    with h5py.File(path, "w", libver="earliest", userblock_size=512) as file:
        variable(file, "signal1", channel(0), "double")
        variable(file, "signal2", channel(1, "f4"), "single")
        variable(file, "Fs", RATE, "double")
        variable(file, "signal2_unit", np.frombuffer("mV".encode("utf-16-le"), "u2").reshape(-1, 1), "char")
        variable(file, "nothing", np.zeros(2, "u8"), "double").attrs["MATLAB_empty"] = np.uint8(1)
        pair = file.create_group("pair")
        pair.attrs["MATLAB_class"] = np.bytes_("struct")
        both = np.stack([channel(2), channel(3)])
        variable(pair, "both", both, "double")
        references = file.create_group("#refs#")
        variable(references, "a", channel(0), "double")
        cell = file.create_dataset("cells", data=np.array([[references["a"].ref]], dtype=h5py.ref_dtype))
        cell.attrs["MATLAB_class"] = np.bytes_("cell")
    head = b"MATLAB 7.3 MAT-file, Platform: none, Created on: Wed Nov 25 00:00:00 2026 HDF5 schema 1.00 ."
    with open(path, "r+b") as file:
        file.write(head.ljust(116) + bytes(8) + b"\x00\x02IM")


if __name__ == "__main__":
    for make in [instrument, latest, converter, odd, unfinished, newest, many, matlab]:
        make(Path(sys.argv[1]))
