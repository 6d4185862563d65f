// SPDX-License-Identifier: EPL-2.0
/** Captures out of files that hold named arrays: which of them belong together, what counts their time, their units. */
package org.dutywright.capture.formats.internal.arrays;
