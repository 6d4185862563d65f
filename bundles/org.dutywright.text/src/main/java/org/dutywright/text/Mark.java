// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

/**
 * A place in a text file.
 *
 * @param line from 1
 * @param column from 1, in characters
 */
public record Mark(int line, int column) {}
