// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis.internal.lines;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Uncertain;

/**
 * The supply voltage that limits in "% of supply" refer to: the mean of the channel with the role supply, else of a
 * channel named exactly {@code supply}, {@code battery} or {@code ubat} that was read as a level or, because it comes
 * and goes, as pulses; else what the user typed, which is taken as exact.
 *
 * @param volts empty if it is not known
 * @param u standard uncertainty in volts, 0 where typed
 * @param origin where it comes from, or why there is none; a phrase
 * @param channel the channel in the capture, empty if it was typed or is unknown
 */
public record SupplyVoltage(OptionalDouble volts, double u, String origin, Optional<ChannelMeasurement> channel) {
    /** Names that make a channel the supply where no channel has the role. */
    public static final List<String> NAMES = List.of("supply", "battery", "ubat");

    /** What {@link #u} is made of. */
    public Budget budget() {
        return channel.flatMap(ChannelMeasurement::level)
                .map(level -> level.mean().budget())
                .orElse(Budget.NONE);
    }

    /** Finds it. */
    public static SupplyVoltage find(CaptureMeasurement measurement, OptionalDouble typedVolts) {
        Optional<ChannelMeasurement> channel = measurement.channels().stream()
                .filter(it -> it.role() == Role.SUPPLY)
                .findFirst()
                .or(() -> measurement.channels().stream()
                        .filter(it -> (it.role() == Role.LEVEL || it.role() == Role.PWM)
                                && NAMES.contains(it.channel().name()))
                        .findFirst());
        Optional<ChannelMeasurement> usable = channel.filter(
                it -> it.level().isPresent() && it.channel().unit().equals("V"));
        if (usable.isPresent()) {
            Uncertain mean = usable.get().level().orElseThrow().mean();
            String origin = "supply taken as " + Say.amount(mean.value(), "V") + ", the mean of channel "
                    + usable.get().channel().name();
            return new SupplyVoltage(OptionalDouble.of(mean.value()), mean.u(), origin, usable);
        }
        if (typedVolts.isPresent()) {
            String origin = String.format(
                    Locale.ROOT, "supply taken as %s as given by the user", Say.amount(typedVolts.getAsDouble(), "V"));
            return new SupplyVoltage(typedVolts, 0, origin, Optional.empty());
        }
        return new SupplyVoltage(
                OptionalDouble.empty(), 0, "% of supply needs a supply channel or --supply VOLTS", Optional.empty());
    }
}
