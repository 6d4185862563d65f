// SPDX-License-Identifier: EPL-2.0
/** Captures: channels, time base, windowed sample access, readers, progress. */
package org.dutywright.capture;
