// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Status;

/**
 * What the rules may know of a channel.
 *
 * @param name of the channel
 * @param unit of its samples
 * @param role what it is
 * @param status whether its pulses could be measured
 * @param statusReason why not
 * @param stepSeconds distance of two samples
 * @param mean mean of all samples, empty if they were not looked at
 * @param transitionMaxSeconds longest transition of a healthy sensor, if known
 * @param pulsed what its pulses tell, if it has any
 */
public record ChannelFacts(
        String name,
        String unit,
        Role role,
        Status status,
        String statusReason,
        double stepSeconds,
        OptionalDouble mean,
        OptionalDouble transitionMaxSeconds,
        Optional<PulsedFacts> pulsed) {}
