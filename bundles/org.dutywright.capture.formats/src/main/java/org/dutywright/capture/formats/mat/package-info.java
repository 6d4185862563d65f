// SPDX-License-Identifier: EPL-2.0
/**
 * Captures in MAT-files of level 5 (versions 5 to 7). Specification: "MAT-File Format" (The MathWorks, 2018). The structure
 * is read by the library MFL; what stands here feeds it bytes within limits and decides what the variables mean. Level 7.3
 * is HDF5 and read by {@link org.dutywright.capture.formats.hdf5}; level 4 is refused.
 *
 * <p>Taken are variables, and fields of single structs, that are real numbers of any type in one or two dimensions (of two,
 * the longer one counts the samples), compressed or not, in either byte order. Which of them make a recording is decided as
 * {@link org.dutywright.capture.formats.internal.arrays} says: arrays of one length with an array of time beside them or
 * around, else with a single number such as {@code Fs} or {@code dt}. A text {@code signal1_unit}, or a field {@code unit}
 * of the same struct, names the unit.
 *
 * <p>The library reads a variable as a whole. Large ones go to a temporary file that the system deletes with its last
 * handle, so memory does not grow with them. Left out, and said so: cells, arrays of structs, objects, sparse and complex
 * numbers, functions.
 */
package org.dutywright.capture.formats.mat;
