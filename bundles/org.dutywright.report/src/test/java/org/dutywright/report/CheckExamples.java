// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.dutywright.report.Examples.some;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.diagnosis.AgreementResult;
import org.dutywright.diagnosis.ChannelMatch;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Line;
import org.dutywright.diagnosis.LineResult;
import org.dutywright.diagnosis.Suspect;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.sensor.Sensor;

/** Made-up checks of the measurement of {@link Examples}. */
final class CheckExamples {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private CheckExamples() {}

    static CheckResult failing() {
        return new CheckResult(
                sensor(),
                match(),
                Verdict.DOES_NOT_CONFORM,
                List.of(
                        new Line("signal1.signal", NONE, NONE, "", NONE, NONE, NONE, LineResult.PASS, ""),
                        new Line(
                                "signal1.frequency",
                                some(200.003),
                                some(0.012),
                                "Hz",
                                some(180),
                                some(220),
                                some(1),
                                LineResult.PASS,
                                ""),
                        new Line(
                                "signal1.transition.rise",
                                some(1.2e-5),
                                some(1e-6),
                                "s",
                                NONE,
                                some(1.3e-5),
                                some(0.84),
                                LineResult.INCONCLUSIVE,
                                "inside the limits, but nearer to a limit than the guard band of 2.0 µs"),
                        new Line(
                                "signal1.duty.released",
                                NONE,
                                NONE,
                                "%",
                                some(8),
                                some(12),
                                NONE,
                                LineResult.NOT_JUDGED,
                                "it is not known whether the sensor was released; say so with --position"),
                        new Line(
                                "signal1.events.missing-pulse",
                                some(2500),
                                NONE,
                                "",
                                NONE,
                                some(0),
                                NONE,
                                LineResult.FAIL,
                                "2500 counted, 0 allowed"),
                        new Line(
                                "signal2.signal",
                                NONE,
                                NONE,
                                "",
                                NONE,
                                NONE,
                                NONE,
                                LineResult.FAIL,
                                "stuck-low: no transition in 0.400 s")),
                Optional.of(new AgreementResult(
                        12.5, 0.2, 4, 8, 0.25, some(0.15), 0.2, true, 40, List.of("signal1", "signal2"))),
                "",
                List.of("no limit for the low level of signal2"),
                List.of(
                        new Suspect(
                                Suspect.Place.SIGNAL_WIRE,
                                Optional.of(Suspect.Kind.INTERMITTENT),
                                List.of("signal1"),
                                0.75,
                                List.of("The carrier kept its phase across 2500 missing pulses."),
                                List.of("No level shift was found.")),
                        new Suspect(
                                Suspect.Place.SENSOR,
                                Optional.empty(),
                                List.of("signal1", "signal2"),
                                0.25,
                                List.of("signal2 is stuck low."),
                                List.of())),
                "Record the same wire at its other end.",
                Examples.measurement());
    }

    static CheckResult conforming() {
        return new CheckResult(
                sensor(),
                new ChannelMatch(Map.of("signal1", "signal1"), true),
                Verdict.CONFORMS,
                List.of(new Line("signal1.signal", NONE, NONE, "", NONE, NONE, NONE, LineResult.PASS, "")),
                Optional.empty(),
                "the sensor text has no agreement",
                List.of(),
                List.of(new Suspect(
                        Suspect.Place.NONE,
                        Optional.empty(),
                        List.of(),
                        1,
                        List.of("All 1 judged lines pass."),
                        List.of())),
                "No further measurement is called for.",
                Examples.measurement());
    }

    static CheckResult inconclusive() {
        CheckResult failing = failing();
        return new CheckResult(
                failing.sensor(),
                failing.match(),
                Verdict.INCONCLUSIVE,
                failing.lines().stream()
                        .filter(line -> line.result() != LineResult.FAIL)
                        .toList(),
                Optional.empty(),
                "signal2 has no cycles",
                List.of(),
                failing.suspects(),
                failing.nextMeasurement(),
                failing.measurement());
    }

    private static ChannelMatch match() {
        Map<String, String> names = new LinkedHashMap<>();
        names.put("signal1", "signal1");
        names.put("signal2", "signal2");
        return new ChannelMatch(names, false);
    }

    private static Sensor sensor() {
        return new Sensor(
                "yard-pedal",
                "Pedal of the Harrow & Tern yard, invented",
                new Sensor.Origin("Demonstration data, invented", "1", "2026-11-25"),
                new Sensor.Quantity("pedal travel", "%", 0, 100),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Map.of(),
                new Sensor.Decision(Sensor.Decision.Rule.THREE_WAY, 2));
    }
}
