// SPDX-License-Identifier: EPL-2.0
/**
 * Captures written in formats that other programs read: the store of {@code org.dutywright.capture.store}, text (RFC
 * 4180), WAV (Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991; above 4 GiB RF64,
 * EBU Tech 3306 version 1.1, 2009) and NumPy arrays (NPY format, versions 1.0 to 3.0, NEP 1).
 *
 * <p>In text and in NumPy arrays, time comes first as {@code time (s)} and {@code time_s}, gaps are jumps of it, and
 * numbers read back as the same doubles. A WAV file holds 16 bits a sample; its comment (INFO chunk, {@code ICMT})
 * states for each channel the full scale, which the code 32768 would stand for, and our own reader reads that.
 */
package org.dutywright.capture.formats.export;
