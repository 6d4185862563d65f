// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import java.util.List;
import java.util.Optional;
import org.dutywright.sensor.Sensor;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.DutyLaw;
import org.dutywright.simulation.EdgeShape;
import org.dutywright.simulation.Profile;
import org.dutywright.simulation.Recording;
import org.dutywright.text.BadValueException;
import org.dutywright.text.MapReader;
import org.dutywright.text.Problems;
import org.dutywright.text.ScalarParser;
import org.dutywright.text.TextNode;

/**
 * Reads one entry of {@code channels}. What it does not say about active level and duty comes from the channel of the
 * same name of the sensor.
 */
final class ChannelText {

    /** An edge that takes longer than this share of a period leaves no state to look at. */
    private static final double LONGEST_EDGE_PERIODS = 0.25;

    /** Samples a period that a carrier needs at least. */
    private static final double SAMPLES_PER_PERIOD = 4;

    private final MapReader map;
    private final Problems problems;
    private final Optional<Recording> recording;
    private final double defaultNoiseVolts;

    private ChannelText(MapReader map, Problems problems, Optional<Recording> recording, double defaultNoiseVolts) {
        this.map = map;
        this.problems = problems;
        this.recording = recording;
        this.defaultNoiseVolts = defaultNoiseVolts;
    }

    /**
     * Reads a channel. Empty without a usable name; otherwise what is wrong has been reported and stands in with a
     * harmless value, so that the rest of the text can be read on.
     */
    static Optional<ChannelModel> read(
            MapReader map,
            Problems problems,
            Optional<Recording> recording,
            double defaultNoiseVolts,
            Optional<Sensor> sensor) {
        return new ChannelText(map, problems, recording, defaultNoiseVolts).read(sensor);
    }

    private Optional<ChannelModel> read(Optional<Sensor> sensor) {
        Optional<String> name = map.required("name", Scalars.channelName());
        Optional<Sensor.SensorChannel> sensorChannel =
                name.flatMap(wanted -> sensor.flatMap(known -> known.channels().stream()
                        .filter(channel -> channel.name().equals(wanted))
                        .findFirst()));
        boolean activeHigh = activeHigh(sensorChannel);
        double carrier = carrier();
        double phase = map.optional("phase", Scalars.percent(0, 100)).orElse(0.0);
        DutyLaw duty = duty(sensorChannel);
        double low = map.required("low", Scalars.volts()).orElse(0.0);
        double high = map.required("high", Scalars.volts()).orElse(low + 1);
        if (map.has("high") && high <= low) {
            map.problemAt("high", "'high' must be above 'low'");
        }
        EdgeShape rise = EdgeText.read(map, "rise", problems).orElse(new EdgeShape.Ramp(0));
        EdgeShape fall = EdgeText.read(map, "fall", problems).orElse(new EdgeShape.Ramp(0));
        checkEdge("rise", rise, carrier);
        checkEdge("fall", fall, carrier);
        double jitter =
                map.optional("jitter", Scalars.notNegative(Scalars.seconds())).orElse(0.0);
        if (jitter * carrier > 0.02) {
            map.problemAt("jitter", "'jitter' must not be above 2 % of the period");
        }
        double noise =
                map.optional("noise", Scalars.notNegative(Scalars.volts())).orElse(defaultNoiseVolts);
        map.finish();
        return name.map(known ->
                new ChannelModel(known, activeHigh, carrier, phase, duty, low, high, rise, fall, jitter, noise));
    }

    private boolean activeHigh(Optional<Sensor.SensorChannel> sensorChannel) {
        Optional<String> active = map.optional("active", ScalarParser.word(List.of("high", "low")));
        if (!map.has("active") && sensorChannel.isEmpty()) {
            problems.add(map.mark(), "a channel needs the key 'active': the sensor has no channel of this name");
        }
        return active.map("high"::equals)
                .orElse(sensorChannel.map(Sensor.SensorChannel::activeHigh).orElse(true));
    }

    private double carrier() {
        Optional<Double> carrier = map.required("carrier", Scalars.positive(Scalars.hertz()));
        if (carrier.isPresent()
                && recording.isPresent()
                && carrier.get() * SAMPLES_PER_PERIOD >= recording.get().sampleRateHz()) {
            map.problemAt("carrier", "'carrier' must be below a quarter of the sample rate");
        }
        return carrier.orElse(1.0);
    }

    private DutyLaw duty(Optional<Sensor.SensorChannel> sensorChannel) {
        Optional<TextNode> node = map.node("duty");
        if (node.isEmpty()) {
            Optional<Sensor.Duty> known = sensorChannel.flatMap(Sensor.SensorChannel::duty);
            if (known.isEmpty()) {
                problems.add(map.mark(), "a channel needs the key 'duty': the sensor has none for this name");
                return new DutyLaw.EndPoints(0, 0);
            }
            return new DutyLaw.EndPoints(
                    known.get().releasedPercent(), known.get().pressedPercent());
        }
        if (node.get() instanceof TextNode.MapNode) {
            MapReader ends = map.child("duty").orElseThrow();
            Optional<Double> released = ends.required("released", Scalars.percent(0, 100));
            Optional<Double> pressed = ends.required("pressed", Scalars.percent(0, 100));
            ends.finish();
            return new DutyLaw.EndPoints(released.orElse(0.0), pressed.orElse(0.0));
        }
        Profile profile = ProfileText.duty(node.get(), problems);
        return new DutyLaw.OverTime(profile);
    }

    private void checkEdge(String key, EdgeShape shape, double carrierHz) {
        if (2 * shape.leadSeconds() * carrierHz > LONGEST_EDGE_PERIODS) {
            map.problemAt(
                    key,
                    "'" + key + "' takes too long: twice its time to 50 % must stay below a quarter of the"
                            + " period");
        }
    }

    /** Reads edges: {@code 20 us} is a straight line from 0 to 100 %, {@code {timeConstant: 8 us}} a single pole. */
    static final class EdgeText {

        private EdgeText() {}

        static Optional<EdgeShape> read(MapReader map, String key, Problems problems) {
            Optional<TextNode> node = map.node(key);
            if (node.isEmpty()) {
                return Optional.empty();
            }
            if (node.get() instanceof TextNode.MapNode) {
                MapReader edge = map.child(key).orElseThrow();
                Optional<Double> constant = edge.required("timeConstant", Scalars.positive(Scalars.seconds()));
                edge.finish();
                return constant.map(EdgeShape.Exponential::new);
            }
            try {
                if (node.get() instanceof TextNode.ScalarNode scalar) {
                    double duration = Scalars.notNegative(Scalars.seconds()).parse(scalar.text());
                    return Optional.of(new EdgeShape.Ramp(duration));
                }
                throw new BadValueException("write a time (20 us) or {timeConstant: 8 us}");
            } catch (BadValueException e) {
                problems.add(node.get().mark(), "'" + key + "': " + e.getMessage());
                return Optional.empty();
            }
        }
    }
}
