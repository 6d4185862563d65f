// SPDX-License-Identifier: EPL-2.0
/**
 * Captures as delimited text: RFC 4180 (2005) and what instruments make of it. Beyond the RFC it takes other
 * delimiters, a decimal comma, a byte order mark, any line ends, text before the table, and a line of units below the
 * headings.
 *
 * <p>Time stamps are numbers in any SI unit of time, or clock times (ISO 8601-1:2019, and what instruments write). A time
 * column that starts anew begins another part of the recording; the parts are put one behind the other with gaps between
 * them. What is found by looking can be said instead: {@link org.dutywright.capture.TableSettings}, {@link
 * org.dutywright.capture.TimeSettings}.
 */
package org.dutywright.capture.formats.csv;
