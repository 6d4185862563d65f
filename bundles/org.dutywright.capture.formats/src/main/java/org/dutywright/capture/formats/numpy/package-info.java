// SPDX-License-Identifier: EPL-2.0
/**
 * Captures as NumPy arrays. Specifications: "NPY format", versions 1.0, 2.0 and 3.0, in the documentation of NumPy 2
 * ({@code numpy.lib.format}), and "ZIP File Format Specification" 6.3 (PKWARE) for {@code .npz}.
 *
 * <p>Taken are arrays of whole numbers, floats (16, 32 and 64 bits) and truth values in either byte order, C or Fortran
 * order, of one or two dimensions, and structured arrays of one, whose fields of numbers are channels or time by their
 * names. Of two, the longer one counts the samples. Floats are in volts as they are, or in the
 * unit in the name of their array ({@code "signal1 (mV)"}); whole numbers and truth values have no unit until the user
 * says with a scale how many volts 1 is.
 *
 * <p>In a {@code .npz} each array of samples is a channel, or one for each of its columns; an array named as a time, as
 * {@code t} or {@code "time (ms)"}, gives the time stamps, and one single value named {@code fs} or {@code sample_rate} the
 * samples a second. A lone array has no names: its first column is taken as time in seconds if it rises throughout its
 * first thousand rows and no sample rate was given.
 *
 * <p>Names in an archive are names of channels only; none becomes a path. What an archive would unpack to is limited.
 */
package org.dutywright.capture.formats.numpy;
