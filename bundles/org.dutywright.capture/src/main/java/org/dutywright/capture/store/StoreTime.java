// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Segment;
import org.dutywright.capture.StatedRate;
import org.dutywright.capture.UnreadableException;

/** What the metadata of a store say about when its samples were taken. */
final class StoreTime {
    private final ArrowFile file;

    StoreTime(ArrowFile file) {
        this.file = file;
    }

    /** Refuses a store that has not as many samples as it says. */
    void checkSamples(long samples) throws UnreadableException {
        String said = text(StoreMetadata.SAMPLES);
        if (!said.equals(Long.toString(samples))) {
            throw changed(file, "it says that it has " + shortened(said) + " samples, and has " + samples);
        }
    }

    double sampleRateHz() throws UnreadableException {
        double rate = ratio(StoreMetadata.STEP, text(StoreMetadata.STEP)).reciprocal();
        if (!(rate > 0) || !Double.isFinite(rate) || !Double.isFinite(1 / rate)) {
            throw changed(file, "its step is " + shortened(text(StoreMetadata.STEP)) + " s");
        }
        return rate;
    }

    /** A number of seconds that is not below 0. */
    double seconds(String key) throws UnreadableException {
        String text = text(key);
        double seconds = number(text);
        if (seconds >= 0) {
            return seconds;
        }
        throw changed(file, key + " is '" + shortened(text) + "'");
    }

    /** The runs of samples without a gap. */
    List<Segment> segments() throws UnreadableException {
        long samples = file.batches().rows();
        Optional<String> several = Optional.ofNullable(file.metadata().get(StoreMetadata.SEGMENTS));
        if (several.isEmpty()) {
            return List.of(new Segment(0, samples, start(text(StoreMetadata.START))));
        }
        List<String> lines = several.get().lines().toList();
        List<Segment> segments = new ArrayList<>();
        long end = samples;
        for (int i = lines.size() - 1; i >= 0; i--) {
            String[] words = lines.get(i).split(" ", -1);
            long first = words.length == 2 ? whole(words[0]) : -1;
            if (first < 0 || first >= end) {
                throw changed(file, "a run of samples is said to be '" + shortened(lines.get(i)) + "'");
            }
            segments.add(new Segment(first, end - first, start(words[1])));
            end = first;
        }
        if (end != 0) {
            throw changed(file, "its first run of samples starts at sample " + end);
        }
        return segments.reversed();
    }

    /** What was stated of the rate beside the time base. */
    List<StatedRate> statedRates() throws UnreadableException {
        List<StatedRate> rates = new ArrayList<>();
        String all = file.metadata().getOrDefault(StoreMetadata.STATED_RATES, "");
        for (String line : all.lines().toList()) {
            String[] words = line.split(" ", 3);
            double rate = words.length == 3 ? number(words[0]) : 0;
            double tolerance = words.length == 3 ? number(words[1]) : -1;
            if (!(rate > 0) || !(tolerance >= 0)) {
                throw changed(file, "a stated rate is '" + shortened(line) + "'");
            }
            rates.add(new StatedRate(words[2], rate, tolerance));
        }
        return rates;
    }

    /** The finite number in a text, or -1. */
    private static double number(String text) {
        try {
            double number = Double.parseDouble(text);
            return Double.isFinite(number) ? number : -1;
        } catch (NumberFormatException e) {
            return -1;
        }
    }

    private double start(String text) throws UnreadableException {
        double start = ratio("an instant", text).value();
        if (!Double.isFinite(start)) {
            throw changed(file, "an instant is '" + shortened(text) + "'");
        }
        return start;
    }

    private static long whole(String text) {
        return text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
    }

    private Ratio ratio(String what, String text) throws UnreadableException {
        Optional<Ratio> ratio = Ratio.parse(text);
        if (ratio.isEmpty()) {
            throw changed(file, what + " is '" + shortened(text) + "', which is no ratio");
        }
        return ratio.get();
    }

    private static String shortened(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "…";
    }

    private String text(String key) throws UnreadableException {
        String text = file.metadata().get(key);
        if (text == null) {
            throw changed(file, key + " is missing in its metadata");
        }
        return text;
    }

    static UnreadableException changed(ArrowFile file, String how) {
        return new UnreadableException(
                file.path(), "", how, "convert the source again; another program has changed this store");
    }
}
