// SPDX-License-Identifier: EPL-2.0
/** From samples to state levels, transitions, cycles, events and statistics. */
package org.dutywright.pulse;
