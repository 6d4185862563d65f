// SPDX-License-Identifier: EPL-2.0
/**
 * Captures as value change dumps. Specification: IEEE Std 1364-2005, clause 18, four-state dumps.
 *
 * <p>A variable of one bit becomes a channel with the values 0 and 1 and no unit, a wider one its bits as a number without
 * sign, a real one its value. Variables that share an identifier are one signal and become one channel, named as the first
 * of them: by its own name where no other channel has it, else with its scopes.
 *
 * <p>A dump is a list of changes: a value holds until the next one. A capture is a list of samples between which lines are
 * drawn. So each instant of a change becomes two rows with the same time stamp, the first with what held until then, the
 * second with what holds from then on: every edge lies exactly where the dump has it and takes no time, whatever lies
 * between the changes, and the number of rows is twice the number of instants, however long the dump. The step of the
 * time base is the dump's unit of time: what the recorder's clock could tell apart.
 *
 * <p>While a chosen signal is unknown (x) or not driven (z) there are no rows, which makes a gap. A signal that is never
 * known becomes no channel unless it was picked. The last value runs to the last instant of the dump.
 */
package org.dutywright.capture.formats.vcd;
