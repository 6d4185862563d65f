// SPDX-License-Identifier: EPL-2.0
/**
 * Captures as delimited text: RFC 4180 (2005) and what instruments make of it. Beyond the RFC it takes other
 * delimiters, a decimal comma, a byte order mark, any line ends, text before the table, and a line of units below the
 * headings.
 */
package org.dutywright.capture.formats.csv;
