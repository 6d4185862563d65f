// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.agreement;

import org.dutywright.pulse.ChannelPlan.Travel;
import org.dutywright.pulse.CycleTable;

/**
 * A channel whose duty can be read as travel.
 *
 * @param name the sensor's name of it
 * @param cycles its cycles; their duty counts the channel's own active level
 * @param travel its own end points
 * @param medianPeriodSeconds its median period T
 */
public record TravelChannel(String name, CycleTable cycles, Travel travel, double medianPeriodSeconds) {}
