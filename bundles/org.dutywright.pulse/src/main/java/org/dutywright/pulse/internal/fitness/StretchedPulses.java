// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.util.List;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.internal.Words;

/**
 * {@code stretchedPulses}: some instruments make short pulses longer, so that they can be seen. Pulses are then never
 * shorter than one length, a small part of the period that the clock of the instrument sets: many have exactly so many samples and hardly any one
 * more, although the carrier is not tied to that clock. A duty that rests at an end of its travel has either length by
 * turns. In a recording of two values only, the same shortest length of both states tells it as well.
 */
final class StretchedPulses implements FitnessRule {
    private static final String ITEM = "stretchedPulses";
    private static final int TWO_VALUES = 2;

    @Override
    public Fitness judge(ChannelFacts channel, PulsedFacts pulsed, List<ChannelFacts> all) {
        PulseLengths low = pulsed.pulses().low();
        PulseLengths high = pulsed.pulses().high();
        double period = pulsed.pulses().periodSamples();
        boolean lowPiled = low.arePiled(period);
        boolean highPiled = high.arePiled(period);
        boolean both = lowPiled && highPiled && low.shortest() == high.shortest();
        boolean found = (pulsed.pulses().isFree() && (lowPiled || highPiled))
                || (both && pulsed.signs().distinct() <= TWO_VALUES);
        if (!found) {
            return FitnessRule.line(channel, ITEM, Grade.GOOD, "no pulses pile up at one shortest length");
        }
        PulseLengths lengths = highPiled ? high : low;
        return FitnessRule.line(
                channel,
                ITEM,
                Grade.POOR,
                Words.of(
                        "%d pulses have exactly %d samples (%s) and none fewer, so the instrument stretches short pulses;"
                                + " switch that off, or record the voltage itself",
                        lengths.piled(),
                        lengths.shortest(),
                        Words.seconds(lengths.shortest() * channel.stepSeconds())));
    }
}
