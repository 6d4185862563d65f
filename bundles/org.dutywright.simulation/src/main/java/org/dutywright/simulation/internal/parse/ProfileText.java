// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.simulation.Profile;
import org.dutywright.text.BadValueException;
import org.dutywright.text.MapReader;
import org.dutywright.text.Problems;
import org.dutywright.text.ScalarParser;
import org.dutywright.text.TextNode;

/**
 * Reads a percentage over time: one value, or a list of points {@code {at: 1 s, travel: 30 %}} with straight lines
 * between. A travel may also have strokes: {@code {at: 2 s, strokes: 3, to: 100 %, press: 150 ms, hold: 200 ms,
 * release: 200 ms, rest: 300 ms}} goes from where the travel stands to {@code to} and back, so many times.
 */
final class ProfileText {

    private static final int MAX_POINTS = 100_000;

    private final Problems problems;
    private final String key;
    private final boolean strokesAllowed;
    private final List<Profile.Point> points = new ArrayList<>();

    private ProfileText(Problems problems, String key, boolean strokesAllowed) {
        this.problems = problems;
        this.key = key;
        this.strokesAllowed = strokesAllowed;
    }

    /** Travel over time. */
    static Profile travel(TextNode node, Problems problems) {
        return new ProfileText(problems, "travel", true).read(node);
    }

    /** Duty over time. */
    static Profile duty(TextNode node, Problems problems) {
        return new ProfileText(problems, "duty", false).read(node);
    }

    private Profile read(TextNode node) {
        switch (node) {
            case TextNode.ScalarNode scalar -> readConstant(scalar);
            case TextNode.ListNode list -> list.items().forEach(this::readItem);
            case TextNode.MapNode map ->
                problems.add(map.mark(), "'" + key + "' needs one value or a list of points, each after a dash");
        }
        if (points.isEmpty()) {
            if (problems.isEmpty()) {
                problems.add(node.mark(), "'" + key + "' needs at least one point");
            }
            return Profile.constant(0);
        }
        return new Profile(points);
    }

    private void readConstant(TextNode.ScalarNode scalar) {
        try {
            double value = Scalars.percent(0, 100).parse(scalar.text());
            points.add(new Profile.Point(0, value));
        } catch (BadValueException e) {
            problems.add(scalar.mark(), "'" + key + "': " + e.getMessage());
        }
    }

    private void readItem(TextNode node) {
        MapReader item = MapReader.of(node, problems, "a point of '" + key + "'");
        Optional<Double> at = item.required("at", Scalars.seconds());
        boolean strokes = strokesAllowed && item.has("strokes");
        Optional<Double> value = strokes ? Optional.empty() : item.required(key, Scalars.percent(0, 100));
        Runnable add = strokes ? strokes(item, at) : () -> add(at.orElseThrow(), value.orElseThrow());
        if (!strokes && strokesAllowed) {
            // Known here, so that a misspelt one is answered with it.
            item.optional("strokes", ScalarParser.text());
        }
        item.finish();
        if (at.isEmpty() || (!strokes && value.isEmpty())) {
            return;
        }
        if (!points.isEmpty() && at.get() < points.getLast().seconds()) {
            item.problemAt("at", "time runs backwards: the point before ends later");
            return;
        }
        add.run();
    }

    private Runnable strokes(MapReader item, Optional<Double> at) {
        Optional<Long> count = item.required("strokes", ScalarParser.whole(1, MAX_POINTS / 4));
        Optional<Double> to = item.required("to", Scalars.percent(0, 100));
        Optional<Double> press = item.required("press", Scalars.positive(Scalars.seconds()));
        Optional<Double> release = item.required("release", Scalars.positive(Scalars.seconds()));
        double hold =
                item.optional("hold", Scalars.notNegative(Scalars.seconds())).orElse(0.0);
        double rest =
                item.optional("rest", Scalars.notNegative(Scalars.seconds())).orElse(0.0);
        if (count.isEmpty() || to.isEmpty() || press.isEmpty() || release.isEmpty() || at.isEmpty()) {
            return () -> {};
        }
        return () -> {
            double from = points.isEmpty() ? 0 : points.getLast().value();
            double seconds = at.get();
            add(seconds, from);
            for (long i = 0; i < count.get() && points.size() < MAX_POINTS; i++) {
                add(seconds += press.get(), to.get());
                add(seconds += hold, to.get());
                add(seconds += release.get(), from);
                add(seconds += rest, from);
            }
            if (points.size() >= MAX_POINTS) {
                item.problemAt("strokes", "the travel has more than " + MAX_POINTS + " points");
            }
        };
    }

    private void add(double seconds, double value) {
        points.add(new Profile.Point(seconds, value));
    }
}
