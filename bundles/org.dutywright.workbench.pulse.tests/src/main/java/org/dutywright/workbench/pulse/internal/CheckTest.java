// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.dutywright.cli.Main;
import org.dutywright.diagnosis.Verdict;
import org.dutywright.simulation.DemoScenarios.Demo;
import org.dutywright.workbench.WindowWords;
import org.dutywright.workbench.session.Findings;
import org.dutywright.workbench.session.SensorChoice;
import org.dutywright.workbench.session.SpanSelection;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A check in the window comes to what the command line says, and leaves markers at the places. */
@WindowTest
final class CheckTest {
    private Yard yard;

    @BeforeEach
    void makeYard() throws Exception {
        yard = Yard.make("checks");
    }

    @AfterEach
    void closeYard() throws Exception {
        yard.close();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"vehicle-03-strokes", "vehicle-05-missing-pulses", "vehicle-19-ratio", "forklift-09-slow-edges"})
    void the_window_and_the_command_line_say_the_same(String name) throws Exception {
        Demo demo = Yard.demo(name);
        IFile file = yard.simulate(demo);
        yard.open(file);
        yard.check(demo.scenario().sensor());
        CheckReport report = yard.report(file);

        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        int status = Main.run(
                new String[] {
                    "check",
                    file.getLocation().toOSString(),
                    "--sensor",
                    demo.scenario().sensor(),
                    "--quiet"
                },
                new PrintStream(printed, true, StandardCharsets.UTF_8),
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8));
        assertThat(report.verdict().map(CheckTest::status)).contains(status);
        assertThat(report.lines())
                .isEqualTo(printed.toString(StandardCharsets.UTF_8)
                        .lines()
                        .map(WindowWords::of)
                        .toList());
        assertThat(SensorChoice.of(file)).contains(demo.scenario().sensor());
    }

    // the exit status of the command line's check
    private static int status(Verdict verdict) {
        return switch (verdict) {
            case CONFORMS -> 0;
            case DOES_NOT_CONFORM -> 1;
            case INCONCLUSIVE -> 2;
        };
    }

    @Test
    void missing_pulses_get_markers_with_their_places() throws Exception {
        Demo demo = Yard.demo("vehicle-05-missing-pulses");
        IFile file = yard.simulate(demo);
        yard.open(file);
        yard.check(demo.scenario().sensor());
        yard.report(file);

        List<IMarker> markers = markers(file);
        List<SpanSelection> places = markers.stream()
                .filter(marker -> marker.getAttribute(Findings.ITEM, "").endsWith(".events.missing-pulse"))
                .map(Findings::place)
                .flatMap(Optional::stream)
                .toList();
        assertThat(places).isNotEmpty().allSatisfy(place -> {
            assertThat(place.file()).isEqualTo(file);
            assertThat(place.channel()).isIn("signal1", "signal2");
            assertThat(place.endSeconds()).isGreaterThan(place.startSeconds());
        });
        assertThat(markers.stream()
                        .anyMatch(marker -> marker.getAttribute(IMarker.SEVERITY, -1) == IMarker.SEVERITY_ERROR))
                .isTrue();
    }

    @Test
    void a_second_check_leaves_only_its_own_markers() throws Exception {
        Demo demo = Yard.demo("vehicle-05-missing-pulses");
        IFile file = yard.simulate(demo);
        yard.open(file);
        yard.check(demo.scenario().sensor());
        yard.report(file);
        long first = markers(file).size();
        yard.check(demo.scenario().sensor());
        yard.report(file);

        assertThat(markers(file)).hasSize((int) first);
    }

    @Test
    void a_good_capture_gets_no_marker() throws Exception {
        Demo demo = Yard.demo("vehicle-03-strokes");
        IFile file = yard.simulate(demo);
        yard.open(file);
        yard.check(demo.scenario().sensor());

        assertThat(yard.report(file).verdict()).contains(Verdict.CONFORMS);
        assertThat(markers(file)).isEmpty();
    }

    private static List<IMarker> markers(IFile file) throws Exception {
        return Arrays.asList(file.findMarkers(Findings.MARKER, true, IResource.DEPTH_ZERO));
    }
}
