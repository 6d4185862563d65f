// SPDX-License-Identifier: EPL-2.0
/**
 * Captures in HDF5 files, MAT-files of level 7.3 among them. Specification: "HDF5 File Format Specification", version 3.0
 * (The HDF Group); what a MAT-file adds to it, the attributes {@code MATLAB_class} and its kin, is described nowhere and
 * taken from files. The format is read by the library jHDF; what stands here decides what its arrays mean, unpacks chunks
 * within limits, and keeps the library from believing what a broken file declares.
 *
 * <p>Taken are datasets of whole numbers, floats of 16, 32 and 64 bits and truth values, in either byte order, of one or
 * two dimensions (of two, the longer one counts the samples): compact, contiguous or in chunks, packed by deflate, shuffle
 * or LZF, with or without checksum. Which of them make a recording is decided as
 * {@link org.dutywright.capture.formats.internal.arrays} says: arrays of one length with the array of time in their group
 * or around it, else with a sample rate or step stated as attribute or single number there. Units are attributes
 * ({@code unit}, {@code units}) or stand in the name; {@code scale_factor} and {@code add_offset} (or {@code scale} and
 * {@code offset}) tell what whole numbers stand for.
 *
 * <p>Left out, and said so: texts, tables, complex numbers, references, lists, cells and objects. Soft and external links
 * are never followed, and an object that several names lead to is read once.
 */
package org.dutywright.capture.formats.hdf5;
