// SPDX-License-Identifier: EPL-2.0
/**
 * Tables and captures as Arrow IPC files: Apache Arrow columnar format, version 1.5, "Serialization and Interprocess
 * Communication (IPC)", section "IPC File Format", metadata version V5 (V4 is read too).
 *
 * <p>The store of a capture is one such file, uncompressed, in record batches of about a million samples. Each channel
 * is a column of its name, its unit in the field's metadata as {@code unit}:
 *
 * <ul>
 *   <li>float32, or float64 where float32 would lose more than a tenth of the smallest step of its values;
 *   <li>int16 in a column {@code NAME_counts}, only where the source holds counts: {@code value = count · scale +
 *       offset}, both in the field's metadata, with the channel's name as {@code channel}.
 * </ul>
 *
 * Uneven captures have a float64 column {@code time_s} before the channels, even ones have none. In the metadata of the
 * schema, ratios are written {@code 1/100000}, lists have one entry a line:
 *
 * <table>
 *   <caption>Metadata of a store</caption>
 *   <tr><td>{@code dutywright.store}</td><td>version of this layout, 1</td></tr>
 *   <tr><td>{@code dutywright.time}</td><td>{@code even} or {@code stamped}</td></tr>
 *   <tr><td>{@code dutywright.samples}</td><td>number of samples of each channel</td></tr>
 *   <tr><td>{@code dutywright.start_s}</td><td>instant of the first sample, a ratio</td></tr>
 *   <tr><td>{@code dutywright.step_s}</td><td>distance of two samples; a ratio if even, else typical</td></tr>
 *   <tr><td>{@code dutywright.stamp_uncertainty_s}</td><td>standard uncertainty of one stamp</td></tr>
 *   <tr><td>{@code dutywright.segments}</td><td>runs without a gap: first sample and its instant, a ratio; absent if
 *       there is one</td></tr>
 *   <tr><td>{@code dutywright.stated_rates}</td><td>rates stated beside the time base: hertz, relative tolerance, and
 *       where; absent if there are none</td></tr>
 *   <tr><td>{@code dutywright.sources}</td><td>files it came from: SHA-256 and path</td></tr>
 *   <tr><td>{@code dutywright.settings}</td><td>what the user said about them</td></tr>
 *   <tr><td>{@code dutywright.guessed}</td><td>what the reader decided by looking at them</td></tr>
 * </table>
 */
package org.dutywright.capture.store;
