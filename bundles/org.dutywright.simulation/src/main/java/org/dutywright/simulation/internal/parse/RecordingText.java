// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.dutywright.simulation.Quantisation;
import org.dutywright.simulation.Recording;
import org.dutywright.text.BadValueException;
import org.dutywright.text.MapReader;
import org.dutywright.text.Problems;
import org.dutywright.text.ScalarParser;

/** Reads the part {@code recording} of a scenario text. */
final class RecordingText {

    private static final double MAX_SAMPLE_RATE_HZ = 1e9;
    private static final int MAX_BITS = 32;
    private static final int MAX_DECIMALS = 12;

    private final MapReader map;
    private final Problems problems;

    private RecordingText(MapReader map, Problems problems) {
        this.map = map;
        this.problems = problems;
    }

    /** Empty if it has no usable rate or duration, which has been reported then. */
    static Optional<Recording> read(MapReader map, Problems problems) {
        return new RecordingText(map, problems).read();
    }

    private Optional<Recording> read() {
        Optional<Double> rate = map.required("sampleRate", sampleRate());
        Optional<Double> duration = map.required("duration", Scalars.positive(Scalars.seconds()));
        double start = map.optional("start", Scalars.seconds()).orElse(0.0);
        Optional<Quantisation> quantisation = map.child("quantisation").flatMap(this::quantisation);
        List<MapReader> pauseMaps = map.children("pauses", "a pause");
        Recording.Format format = format();
        if (rate.isEmpty() || duration.isEmpty()) {
            return Optional.empty();
        }
        double samples = rate.get() * duration.get();
        if (samples < 1 || samples > Recording.MAX_SAMPLES) {
            map.problemAt(
                    "duration",
                    String.format(
                            "%.4g samples (sampleRate times duration) are not within 1 and %.4g",
                            samples, Recording.MAX_SAMPLES));
            return Optional.empty();
        }
        List<Recording.Pause> pauses = pauses(pauseMaps, start, start + duration.get());
        Recording recording = new Recording(rate.get(), start, duration.get(), quantisation, pauses, format);
        if (recording.segments().isEmpty()) {
            map.problemAt("pauses", "the pauses leave no sample of the recording; shorten them");
        }
        return Optional.of(recording);
    }

    /** Noise RMS of all channels that do not state their own. */
    static double noiseVolts(MapReader map) {
        return map.optional("noise", Scalars.notNegative(Scalars.volts())).orElse(0.0);
    }

    private static ScalarParser<Double> sampleRate() {
        return text -> {
            double value = Scalars.positive(Scalars.hertz()).parse(text);
            if (value > MAX_SAMPLE_RATE_HZ) {
                throw new BadValueException("'" + text.strip() + "' is above 1 GHz");
            }
            return value;
        };
    }

    private Optional<Quantisation> quantisation(MapReader steps) {
        Optional<Double> step = steps.optional("step", Scalars.positive(Scalars.volts()));
        if (steps.has("step")) {
            steps.finish();
            return step.map(Quantisation::ofStep);
        }
        Optional<Long> bits = steps.required("bits", ScalarParser.whole(1, MAX_BITS));
        Optional<Double> min = steps.required("min", Scalars.volts());
        Optional<Double> max = steps.required("max", Scalars.volts());
        steps.finish();
        if (bits.isEmpty() || min.isEmpty() || max.isEmpty()) {
            return Optional.empty();
        }
        if (min.get() >= max.get()) {
            steps.problemAt("max", "'max' must be above 'min'");
            return Optional.empty();
        }
        return Optional.of(Quantisation.ofBits(bits.get().intValue(), min.get(), max.get()));
    }

    private Recording.Format format() {
        boolean timeColumn = map.optional("timeColumn", ScalarParser.flag()).orElse(true);
        String timeUnit = map.optional("timeUnit", ScalarParser.word(List.of("s", "ms", "us")))
                .orElse("s");
        String valueUnit =
                map.optional("valueUnit", ScalarParser.word(List.of("V", "mV"))).orElse("V");
        Optional<Long> decimals = map.optional("decimals", ScalarParser.whole(0, MAX_DECIMALS));
        return new Recording.Format(
                timeColumn,
                timeUnit,
                valueUnit,
                decimals.map(value -> OptionalInt.of(value.intValue())).orElse(OptionalInt.empty()));
    }

    private List<Recording.Pause> pauses(List<MapReader> maps, double start, double end) {
        List<Recording.Pause> pauses = new ArrayList<>();
        double earliest = start;
        for (MapReader pause : maps) {
            Optional<Double> from = pause.required("from", Scalars.seconds());
            Optional<Double> to = pause.required("to", Scalars.seconds());
            pause.finish();
            if (from.isEmpty() || to.isEmpty()) {
                continue;
            }
            if (from.get() >= to.get()) {
                pause.problemAt("to", "'to' must come after 'from'");
            } else if (from.get() < earliest || to.get() > end) {
                problems.add(pause.mark(), "a pause must lie inside the recording and after the pause before it");
            } else {
                pauses.add(new Recording.Pause(from.get(), to.get()));
                earliest = to.get();
            }
        }
        return pauses;
    }
}
