// SPDX-License-Identifier: EPL-2.0
/**
 * Captures as COMTRADE records. Specification: IEEE Std C37.111-1991, -1999 and -2013 (IEC 60255-24:2013), "Common Format
 * for Transient Data Exchange": a configuration ({@code .cfg}) with its data ({@code .dat}, ASCII, BINARY, BINARY32 or
 * FLOAT32) beside it, or both in one file ({@code .cff}). Either of the two files may be named; the other is looked for
 * beside it.
 *
 * <p>An analog value is a·x + b in the unit of its channel; whether that is at the primary or the secondary side of a
 * transformer is said and not converted. A status channel has the values 0 and 1 and no unit. Time counts from the first
 * sample: by the sample rate where there is one, by each sample's own rate where there are several, else by the time
 * stamps. A record with a missing value is left out and becomes a gap, and so do sample numbers that are skipped.
 *
 * <p>The time skew of a channel (field {@code skew} of its line in the configuration: from the start of the sample
 * period to the conversion, in microseconds) is told and not applied. The samples of a record have one time stamp, as all
 * samples of a capture have; to shift one channel would take interpolated values for the recorded ones. A constant skew moves no period, duty or
 * level; it only moves the instants of a channel against those of the others, by less than a sample period.
 */
package org.dutywright.capture.formats.comtrade;
