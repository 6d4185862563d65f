// SPDX-License-Identifier: EPL-2.0
/**
 * Captures as sound files. Specifications: RIFF and WAVE by "Multimedia Programming Interface and Data Specifications
 * 1.0" (IBM and Microsoft, 1991) with "Multiple Channel Audio Data and WAVE Files" (Microsoft, 2007) for the extensible
 * format; RF64 by EBU Tech 3306 (2009), which ITU-R BS.2088 continues as BW64; u-law and A-law by ITU-T G.711 (1988).
 * RIFX is the same with the most significant byte first.
 *
 * <p>Taken are PCM of 1 to 64 bits, float of 32 and 64 bits, u-law and A-law. Full scale is 1: a file of sound knows no
 * volts. A channel therefore has no unit until the user says how many volts full scale is, or the comment of the file
 * (chunk {@code ICMT} of a list {@code INFO} before the samples) says it in the words of {@code convert}.
 *
 * <p>A data chunk that declares no size, all ones or more than there is reaches to the end of the file. Chunks that are
 * not known are skipped.
 */
package org.dutywright.capture.formats.wav;
