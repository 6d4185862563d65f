// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.units.ScaledUnit;

/** Makes one capture of several that were recorded together, each with other columns. */
final class Joining {
    private static final int BLOCK = 1 << 13;
    private static final double ROUNDING_STEPS = 1e-6;

    private Joining() {}

    /**
     * Joins captures, at least two of one source each. The shortest says how many rows there are.
     *
     * @throws UnreadableException if start, step or gaps differ by more than half a sample; names both files
     */
    static Capture join(List<Capture> captures, Progress progress) throws UnreadableException, IOException {
        long rows = captures.stream().mapToLong(Capture::sampleCount).min().orElseThrow();
        List<Capture> cut = new ArrayList<>();
        for (Capture capture : captures) {
            cut.add(Windows.rows(capture, 0, rows));
        }
        for (Capture other : cut.subList(1, cut.size())) {
            checkSame(cut.get(0), other, progress);
        }
        List<Source> sources = new ArrayList<>();
        List<String> names = new ArrayList<>();
        List<String> units = new ArrayList<>();
        for (Capture capture : captures) {
            sources.addAll(capture.sources());
            capture.channels().forEach(channel -> {
                names.add(channel.name());
                units.add(channel.unit());
            });
        }
        List<Channel> channels = new ArrayList<>();
        List<String> unique = ColumnChoice.uniqueNames(names);
        for (int i = 0; i < unique.size(); i++) {
            channels.add(new Channel(unique.get(i), units.get(i)));
        }
        Samples samples = SampleViews.joined(cut.stream().map(Capture::samples).toList());
        List<StatedRate> statedRates = captures.stream()
                .flatMap(capture -> capture.statedRates().stream())
                .distinct()
                .toList();
        return new Capture(
                sources,
                channels,
                cut.get(0).timeBase(),
                samples,
                guessed(captures, rows),
                statedRates,
                asRead(captures, unique));
    }

    /** What was alike for all files, and the unit of each channel. */
    private static ReadSettings asRead(List<Capture> captures, List<String> names) {
        Map<String, ScaledUnit> units = new LinkedHashMap<>();
        ReadSettings alike = captures.get(0).asRead();
        int at = 0;
        for (Capture capture : captures) {
            ReadSettings its = capture.asRead();
            alike = new ReadSettings(
                    its.format().equals(alike.format()) ? alike.format() : Optional.empty(),
                    its.sampleRateHz().equals(alike.sampleRateHz()) ? alike.sampleRateHz() : OptionalDouble.empty(),
                    List.of(),
                    Map.of(),
                    Map.of(),
                    its.fullScaleVolts().equals(alike.fullScaleVolts())
                            ? alike.fullScaleVolts()
                            : OptionalDouble.empty(),
                    its.time().equals(alike.time()) ? alike.time() : TimeSettings.none(),
                    its.table().equals(alike.table()) ? alike.table() : TableSettings.none());
            for (Channel channel : capture.channels()) {
                ScaledUnit unit = its.units().get(channel.name());
                if (unit != null) {
                    units.put(names.get(at), unit);
                }
                at++;
            }
        }
        return alike.withChannels(List.of(), Map.of(), units);
    }

    private static Map<String, String> guessed(List<Capture> captures, long rows) {
        Map<String, String> all = new LinkedHashMap<>();
        for (Capture capture : captures) {
            String file = file(capture).toString();
            capture.guessed().forEach((key, value) -> all.put(file + ": " + key, value));
            if (capture.sampleCount() > rows) {
                all.put(
                        file + ": rows after the end of the shortest file",
                        capture.sampleCount() - rows + ", left out");
            }
        }
        return all;
    }

    private static void checkSame(Capture one, Capture other, Progress progress)
            throws UnreadableException, IOException {
        TimeBase first = one.timeBase();
        TimeBase second = other.timeBase();
        double limit = limitSeconds(one, other);
        if (!(Math.abs(first.secondsAt(0) - second.secondsAt(0)) <= limit)) {
            throw differ(one, other, "start at " + first.secondsAt(0) + " s and " + second.secondsAt(0) + " s");
        }
        checkGaps(one, other);
        boolean even = first.sampleRateHz().isPresent() && second.sampleRateHz().isPresent();
        double[] a = new double[BLOCK];
        double[] b = new double[BLOCK];
        for (Segment segment : first.segments()) {
            // two straight lines are farthest apart at an end
            long from = even ? segment.endSample() - 1 : segment.firstSample();
            for (long at = from; at < segment.endSample(); at += BLOCK) {
                progress.checkCancelled();
                int here = (int) Math.min(BLOCK, segment.endSample() - at);
                first.readSeconds(at, a, 0, here);
                second.readSeconds(at, b, 0, here);
                for (int i = 0; i < here; i++) {
                    if (!(Math.abs(a[i] - b[i]) <= limit)) {
                        throw differ(
                                one,
                                other,
                                "have steps of " + first.stepSeconds() + " s and "
                                        + second.stepSeconds() + " s, so that row " + (at + i + 1) + " lies at " + a[i]
                                        + " s and " + b[i] + " s");
                    }
                }
            }
        }
    }

    private static void checkGaps(Capture one, Capture other) throws UnreadableException {
        List<Segment> first = one.timeBase().segments();
        List<Segment> second = other.timeBase().segments();
        double limit = limitSeconds(one, other);
        boolean same = first.size() == second.size();
        for (int i = 0; same && i < first.size(); i++) {
            same = first.get(i).firstSample() == second.get(i).firstSample()
                    && Math.abs(first.get(i).startSeconds() - second.get(i).startSeconds()) <= limit;
        }
        if (!same) {
            throw differ(one, other, "have gaps at different places");
        }
    }

    /** Half a sample, and a little for the rounding of instants. */
    private static double limitSeconds(Capture one, Capture other) {
        double step = Math.min(one.timeBase().stepSeconds(), other.timeBase().stepSeconds());
        return step * (0.5 + ROUNDING_STEPS);
    }

    private static UnreadableException differ(Capture one, Capture other, String how) {
        return new UnreadableException(
                file(other),
                "",
                "is no part of the recording in " + file(one) + ": they " + how,
                "give files of one recording with the same start and step, or measure them apart");
    }

    private static Path file(Capture capture) {
        return capture.sources().get(0).path();
    }
}
