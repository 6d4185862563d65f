// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.internal.arrays;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.ReadSettings;

/**
 * Arrays of one length and one time.
 *
 * @param rows their length, as declared
 * @param timing what counts their time
 * @param arrays the arrays, without the one of time
 */
record Recording(long rows, Timing timing, List<NumberArray> arrays) {
    private record Key(long rows, Optional<NumberArray> stamps, OptionalDouble rateHz, double startSeconds) {}

    /** Copies its list. */
    Recording {
        arrays = List.copyOf(arrays);
    }

    /** The recordings in a file: those whose time is known first, the largest first. */
    static List<Recording> in(ArrayContents contents, ReadSettings settings) {
        List<NumberArray> times = contents.arrays().stream()
                .filter(array -> Timing.isTime(contents, array, settings.time()))
                .toList();
        Map<Key, List<NumberArray>> groups = new LinkedHashMap<>();
        Map<Key, Timing> timings = new LinkedHashMap<>();
        for (NumberArray array : contents.arrays()) {
            if (!times.contains(array)) {
                Timing timing = Timing.find(contents, times, array, settings);
                Key key = new Key(array.rows(), timing.stamps(), timing.rateHz(), timing.startSeconds());
                timings.putIfAbsent(key, timing);
                groups.computeIfAbsent(key, made -> new ArrayList<>()).add(array);
            }
        }
        List<Recording> recordings = new ArrayList<>();
        groups.forEach((key, arrays) -> recordings.add(new Recording(key.rows(), timings.get(key), arrays)));
        recordings.sort(Comparator.comparing((Recording one) -> !one.timing().isKnown())
                .thenComparing(Comparator.comparingDouble(Recording::values).reversed()));
        return recordings;
    }

    private double values() {
        return arrays.stream()
                .mapToDouble(array -> (double) array.rows() * array.columns())
                .sum();
    }

    /** How each array is called: its path without what all of them share, unless nothing else is left. */
    List<String> names() {
        List<String> paths = arrays.stream().map(NumberArray::path).toList();
        String shared = Facts.groupOf(paths.get(0));
        while (!shared.isEmpty() && !allWithin(paths, shared + "/")) {
            shared = Facts.groupOf(shared);
        }
        int skipped = shared.isEmpty() ? 0 : shared.length() + 1;
        List<String> names = paths.stream().map(path -> path.substring(skipped)).toList();
        String leaf = Facts.leafOf(paths.get(0));
        boolean alike = names.size() > 1
                && names.stream().allMatch(name -> name.length() > leaf.length() && name.endsWith("/" + leaf));
        return alike ? names.stream().map(Facts::groupOf).toList() : names;
    }

    private static boolean allWithin(List<String> paths, String start) {
        return paths.stream().allMatch(path -> path.startsWith(start));
    }
}
