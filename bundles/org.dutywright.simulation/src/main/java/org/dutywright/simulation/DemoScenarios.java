// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.dutywright.text.ProblemsException;

/**
 * The demonstration scenarios: recordings from the works yard of Harrow & Tern, which is invented, as are its
 * vehicles, its sensors and every number.
 */
public final class DemoScenarios {

    private static final List<String> NAMES = List.of(
            "vehicle-03-released",
            "vehicle-03-strokes",
            "vehicle-05-missing-pulses",
            "vehicle-08-open-path",
            "vehicle-11-supply-loss",
            "vehicle-12-two-parts",
            "vehicle-14-ground-lift",
            "vehicle-17-frequency",
            "vehicle-19-ratio",
            "vehicle-22-runts",
            "vehicle-26-stuck-high",
            "vehicle-28-noisy",
            "vehicle-31-at-the-limit",
            "forklift-04-throttle",
            "forklift-09-slow-edges");

    /**
     * One of them.
     *
     * @param name of its file, without ending
     * @param text as its author wrote it
     * @param scenario what it means
     */
    public record Demo(String name, String text, Scenario scenario) {}

    private DemoScenarios() {}

    /** All of them, in the order in which they tell their story. */
    public static List<Demo> all() {
        return NAMES.stream().map(DemoScenarios::load).toList();
    }

    private static Demo load(String name) {
        String file = name + ".yaml";
        try (InputStream stream = DemoScenarios.class.getResourceAsStream("internal/demo/" + file)) {
            if (stream == null) {
                throw new IllegalStateException("the demonstration scenario " + file + " is not in the product");
            }
            String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            return new Demo(name, text, Scenario.parse(file, text));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (ProblemsException e) {
            throw new IllegalStateException("a demonstration scenario is broken: " + e.getMessage(), e);
        }
    }
}
