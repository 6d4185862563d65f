// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Segment;
import org.dutywright.capture.TimeBase;

/** What a store says of its capture as a whole; the keys stand in the package description. */
final class StoreMetadata {
    private static final String PREFIX = "dutywright.";
    static final String STORE = PREFIX + "store";
    static final String TIME = PREFIX + "time";
    static final String SAMPLES = PREFIX + "samples";
    static final String START = PREFIX + "start_s";
    static final String STEP = PREFIX + "step_s";
    static final String STAMP_UNCERTAINTY = PREFIX + "stamp_uncertainty_s";
    static final String SEGMENTS = PREFIX + "segments";
    static final String STATED_RATES = PREFIX + "stated_rates";
    static final String SOURCES = PREFIX + "sources";
    static final String SETTINGS = PREFIX + "settings";
    static final String GUESSED = PREFIX + "guessed";

    static final String VERSION = "1";
    static final String EVEN = "even";
    static final String STAMPED = "stamped";
    static final String TIME_COLUMN = "time_s";
    static final String COUNTS_ENDING = "_counts";

    static final String UNIT = "unit";
    static final String SCALE = "scale";
    static final String OFFSET = "offset";
    static final String CHANNEL = "channel";

    /** The unit as other programs name it. */
    static final String UNITS = "units";

    /** All keys that are read. */
    static final Set<String> KEYS = Set.of(
            STORE,
            TIME,
            SAMPLES,
            START,
            STEP,
            STAMP_UNCERTAINTY,
            SEGMENTS,
            STATED_RATES,
            SOURCES,
            SETTINGS,
            GUESSED,
            UNIT,
            UNITS,
            SCALE,
            OFFSET,
            CHANNEL);

    private StoreMetadata() {}

    static Map<String, String> of(Capture capture, Map<String, String> settings) throws IOException {
        TimeBase base = capture.timeBase();
        List<Segment> segments = base.segments();
        Map<String, String> all = new LinkedHashMap<>();
        all.put(STORE, VERSION);
        all.put(TIME, base.sampleRateHz().isPresent() ? EVEN : STAMPED);
        all.put(SAMPLES, Long.toString(capture.sampleCount()));
        double start = segments.isEmpty() ? 0 : segments.get(0).startSeconds();
        all.put(START, Ratio.of(start).text());
        if (base.sampleRateHz().isPresent()) {
            all.put(STEP, Ratio.stepOf(base.sampleRateHz().getAsDouble()).text());
        } else {
            all.put(STEP, Double.toString(base.stepSeconds()));
            all.put(STAMP_UNCERTAINTY, Double.toString(base.stampUncertaintySeconds()));
        }
        if (segments.size() > 1) {
            String lines = segments.stream()
                    .map(segment -> segment.firstSample() + " "
                            + Ratio.of(segment.startSeconds()).text())
                    .collect(Collectors.joining("\n"));
            all.put(SEGMENTS, lines);
        }
        if (!capture.statedRates().isEmpty()) {
            String rates = capture.statedRates().stream()
                    .map(rate -> rate.sampleRateHz() + " " + rate.relativeTolerance() + " " + oneLine(rate.origin()))
                    .collect(Collectors.joining("\n"));
            all.put(STATED_RATES, rates);
        }
        String sources = capture.sources().stream()
                .map(source -> source.sha256() + " " + oneLine(source.path().toString()))
                .collect(Collectors.joining("\n"));
        all.put(SOURCES, sources);
        all.put(SETTINGS, lines(settings));
        all.put(GUESSED, lines(capture.guessed()));
        return all;
    }

    private static String lines(Map<String, String> entries) {
        return entries.entrySet().stream()
                .map(entry -> oneLine(entry.getKey()) + ": " + oneLine(entry.getValue()))
                .collect(Collectors.joining("\n"));
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\p{Cntrl}", " ");
    }
}
