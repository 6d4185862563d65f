// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.EdgeShape;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Recording;
import org.dutywright.text.MapReader;
import org.dutywright.text.Problems;
import org.dutywright.text.ScalarParser;

/** Makes the faults of one entry, each for one channel and one place in time. */
interface FaultMaker {

    /** The fault of one channel from one instant to another; both are the same for what happens at an instant. */
    Fault make(ChannelModel channel, double from, double to);

    /** Reads the keys that belong to the kind. What is wrong is reported and stands in with a harmless value. */
    static FaultMaker read(
            FaultKind kind,
            MapReader map,
            Problems problems,
            Optional<Recording> recording,
            List<ChannelModel> concerned) {
        Keys keys = new Keys(map, problems, recording, concerned);
        return switch (kind) {
            case MISSING_PULSE -> keys.missingPulse();
            case RUNT -> keys.runt();
            case BOUNCE -> keys.bounce();
            case EXTRA_PULSE -> keys.extraPulse();
            case SIGNAL_OPEN -> keys.signalOpen();
            case SUPPLY_LOSS -> keys.supplyLoss();
            case GROUND_LIFT -> keys.groundLift();
            case LEVEL_SHIFT -> keys.levelShift();
            case FREQUENCY -> keys.frequency();
            case RATIO -> keys.ratio();
            case DUTY_JUMP -> keys.dutyJump();
            case STUCK_LOW -> keys.stuck(false);
            case STUCK_HIGH -> keys.stuck(true);
            case SLOW_EDGES -> keys.slowEdges();
            case NOISE_BURST -> keys.noiseBurst();
        };
    }

    /** The keys of each kind. */
    record Keys(MapReader map, Problems problems, Optional<Recording> recording, List<ChannelModel> concerned) {

        private static final int MAX_PULSES = 1_000_000;
        private static final int MAX_PAIRS = 20;

        /** Further transitions within this share of a period after an edge are its bounce. */
        private static final double BOUNCE_PERIODS = 0.05;

        /** Distances of a bounce vary by 30 %; see the signal. */
        private static final double LONGEST_SPACING = 1.3;

        FaultMaker missingPulse() {
            int pulses = pulses();
            return (channel, from, to) -> new Fault.MissingPulse(channel.name(), from, pulses);
        }

        FaultMaker runt() {
            int pulses = pulses();
            double reach = map.required("reach", Scalars.percent(1, 99)).orElse(50.0);
            return (channel, from, to) -> new Fault.Runt(channel.name(), from, pulses, reach);
        }

        private int pulses() {
            return map.optional("pulses", ScalarParser.whole(1, MAX_PULSES))
                    .orElse(1L)
                    .intValue();
        }

        FaultMaker bounce() {
            int pairs = map.optional("pairs", ScalarParser.whole(1, MAX_PAIRS))
                    .orElse(1L)
                    .intValue();
            Optional<Double> spacing = map.required("spacing", Scalars.positive(Scalars.seconds()));
            boolean afterActive = map.optional("after", ScalarParser.word(List.of("active", "inactive")))
                    .map("active"::equals)
                    .orElse(true);
            double longest = 2 * pairs * LONGEST_SPACING * spacing.orElse(0.0);
            if (concerned.stream().anyMatch(channel -> longest > BOUNCE_PERIODS * channel.periodSeconds())) {
                map.problemAt(
                        "spacing",
                        "the bounces must be over within 5 % of the period; two a pair, and each"
                                + " distance may be 30 % longer than 'spacing'");
            }
            double seconds = spacing.orElse(1e-6);
            return (channel, from, to) -> new Fault.Bounce(channel.name(), from, pairs, seconds, afterActive);
        }

        FaultMaker extraPulse() {
            Optional<Double> width = map.required("width", Scalars.positive(Scalars.seconds()));
            double reach = map.optional("reach", Scalars.percent(1, 100)).orElse(100.0);
            if (concerned.stream().anyMatch(channel -> width.orElse(0.0) > channel.periodSeconds() / 2)) {
                map.problemAt("width", "an extra pulse must not be wider than half a period");
            }
            return (channel, from, to) -> new Fault.ExtraPulse(channel.name(), from, width.orElse(1e-6), reach);
        }

        FaultMaker signalOpen() {
            Optional<Double> level = map.optional("level", Scalars.volts());
            return (channel, from, to) ->
                    new Fault.SignalOpen(channel.name(), from, to, level.orElse(channel.highVolts()));
        }

        FaultMaker supplyLoss() {
            double restart = map.required("restart", Scalars.notNegative(Scalars.seconds()))
                    .orElse(0.0);
            Optional<Double> level = map.optional("level", Scalars.volts());
            Optional<Double> firstPeriod = map.optional("firstPeriod", Scalars.positive(Scalars.seconds()));
            OptionalDouble first = firstPeriod.map(OptionalDouble::of).orElse(OptionalDouble.empty());
            boolean supplyLine = map.optional("lost", ScalarParser.word(List.of("supply", "ground")))
                    .map("supply"::equals)
                    .orElse(true);
            return (channel, from, to) -> new Fault.SupplyLoss(
                    channel.name(), from, to, restart, level.orElse(channel.highVolts()), first, supplyLine);
        }

        FaultMaker groundLift() {
            double by = map.required("by", Scalars.volts()).orElse(0.0);
            boolean liftsHigh = map.optional("liftsHigh", ScalarParser.flag()).orElse(false);
            if (!liftsHigh) {
                checkLevels("by", by, 0);
            }
            return (channel, from, to) -> new Fault.GroundLift(channel.name(), from, to, by, liftsHigh);
        }

        FaultMaker levelShift() {
            Optional<Double> low = map.optional("low", Scalars.volts());
            Optional<Double> high = map.optional("high", Scalars.volts());
            if (!map.has("low") && !map.has("high")) {
                problems.add(map.mark(), "a level-shift needs the key 'low' or 'high': by how much it moves");
            }
            double lowBy = low.orElse(0.0);
            double highBy = high.orElse(0.0);
            checkLevels(map.has("high") ? "high" : "low", lowBy, highBy);
            return (channel, from, to) -> new Fault.LevelShift(channel.name(), from, to, lowBy, highBy);
        }

        private void checkLevels(String key, double lowBy, double highBy) {
            if (concerned.stream().anyMatch(channel -> lowBy - highBy >= channel.swingVolts())) {
                map.problemAt(key, "the low level would not stay below the high one");
            }
        }

        FaultMaker frequency() {
            Optional<Double> carrier = map.optional("carrier", Scalars.positive(Scalars.hertz()));
            Optional<Double> factor = map.optional("factor", Scalars.positive(ScalarParser.number()));
            if (map.has("carrier") == map.has("factor")) {
                problems.add(map.mark(), "a frequency fault needs either the key 'carrier' or the key 'factor'");
            }
            FaultMaker maker = (channel, from, to) -> new Fault.Frequency(
                    channel.name(),
                    from,
                    to,
                    carrier.map(hertz -> hertz / channel.carrierHz()).orElse(factor.orElse(1.0)));
            double limit = recording.map(known -> known.sampleRateHz() / 4).orElse(Double.POSITIVE_INFINITY);
            if (concerned.stream().anyMatch(channel -> wrongHertz(channel, maker) >= limit)) {
                map.problemAt(
                        map.has("carrier") ? "carrier" : "factor",
                        "the wrong carrier must be below a quarter of the sample rate");
            }
            return maker;
        }

        private static double wrongHertz(ChannelModel channel, FaultMaker maker) {
            return maker.make(channel, 0, 0) instanceof Fault.Frequency fault
                    ? fault.factor() * channel.carrierHz()
                    : 0;
        }

        FaultMaker ratio() {
            double gain = map.optional("gain", Scalars.positive(ScalarParser.number()))
                    .orElse(1.0);
            double offset = map.optional("offset", Scalars.percent(-100, 100)).orElse(0.0);
            if (!map.has("gain") && !map.has("offset")) {
                problems.add(map.mark(), "a ratio fault needs the key 'gain' or 'offset'");
            }
            return (channel, from, to) -> new Fault.Ratio(channel.name(), from, to, gain, offset);
        }

        FaultMaker dutyJump() {
            double travel = map.required("travel", Scalars.percent(0, 100)).orElse(0.0);
            double width = map.required("width", Scalars.percent(0, 100)).orElse(0.0);
            double offset = map.required("offset", Scalars.percent(-100, 100)).orElse(0.0);
            return (channel, from, to) -> new Fault.DutyJump(channel.name(), from, to, travel, width, offset);
        }

        FaultMaker stuck(boolean high) {
            Optional<Double> level = map.optional("level", Scalars.volts());
            return (channel, from, to) -> new Fault.Stuck(
                    channel.name(), from, to, high, level.orElse(high ? channel.highVolts() : channel.lowVolts()));
        }

        FaultMaker slowEdges() {
            Optional<EdgeShape> rise = ChannelText.EdgeText.read(map, "rise", problems);
            Optional<EdgeShape> fall = ChannelText.EdgeText.read(map, "fall", problems);
            if (!map.has("rise") && !map.has("fall")) {
                problems.add(map.mark(), "a slow-edges fault needs the key 'rise' or 'fall'");
            }
            return (channel, from, to) -> new Fault.SlowEdges(channel.name(), from, to, rise, fall);
        }

        FaultMaker noiseBurst() {
            double rms = map.required("rms", Scalars.positive(Scalars.volts())).orElse(0.0);
            return (channel, from, to) -> new Fault.NoiseBurst(channel.name(), from, to, rms);
        }
    }
}
