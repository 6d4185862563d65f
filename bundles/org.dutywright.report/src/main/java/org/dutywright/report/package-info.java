// SPDX-License-Identifier: EPL-2.0
/**
 * Writers of what was measured and judged: JSON and CSV for programs, text for people. What was said and guessed about
 * reading a file is kept as a text of import settings, which {@link org.dutywright.report.ImportText} writes and reads:
 *
 * <pre>{@code
 * schema: dutywright.import/1
 * name: Bench recorder, text export
 * format: csv                        # id of a reader, as 'dutywright plugins' lists them
 * sampleRate: 50 kHz                 # only where no column holds time
 * table:
 *   encoding: UTF-8                  # UTF-8, UTF-16LE, UTF-16BE, ISO-8859-1 or windows-1252
 *   delimiter: semicolon             # tab, semicolon, vertical bar, comma or spaces
 *   decimalMark: comma               # point or comma
 *   headerLine: 3                    # or none
 *   unitsLine: none
 *   firstLine: 5                     # of values
 * time: {column: "t (ms)", unit: ms} # heading, #1 for the first column of the file, or none
 * fullScale: 5 V                     # of sound files
 * channels:                          # these and no others, in this order; left out, all of them
 *   - {column: "pedal (mV)", name: signal1, unit: mV, scale: 11, role: pwm}
 *   - {column: "#2", name: signal2}  # the second column of values
 * }</pre>
 *
 * <p>Only {@code schema} and {@code name} must be there, and {@code column} and {@code name} of a channel; what is not
 * said is found out.
 */
package org.dutywright.report;
