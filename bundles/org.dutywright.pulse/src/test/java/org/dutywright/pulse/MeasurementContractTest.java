// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What every installed measurement must keep to. */
class MeasurementContractTest {
    private static final List<Measurement> INSTALLED =
            CaptureMeasurer.withInstalled().measurements();

    private static ChannelContext context() {
        Uncertain low = new Uncertain(0.5, 0.001, 0.002);
        Uncertain high = new Uncertain(11.5, 0.001, 0.002);
        return new ChannelContext(
                "signal1",
                "V",
                ActiveLevel.HIGH,
                new StateLevels(low, high, 0.02, 0.02),
                5e-3,
                1e-7,
                3e-6,
                0.05,
                1e-5,
                3e-5,
                PulseSettings.defaults());
    }

    private static List<Result> feed(Measurement measurement, int cycles, boolean disturbed) {
        Measurement.Run run = measurement.start(context());
        for (int i = 0; i < cycles; i++) {
            double start = 1 + i * 5e-3;
            double pulse = 1e-3 + i % 7 * 1e-6;
            Aberration beyond = new Aberration(0.1 + i % 3 * 0.01, 4, 1e-3);
            run.transition(new Transition(true, start, 2e-5 + i % 3 * 1e-6, 2, 0, beyond, beyond), disturbed);
            run.transition(new Transition(false, start + 1e-3, 3e-5 + i % 5 * 1e-6, 3), disturbed);
            run.cycle(
                    new Cycle(i, start, 5e-3, pulse, 2.7, disturbed),
                    new CycleShape(26, Optional.of(new CycleShape.InputCycle(5e-3, pulse, 2e-6, 3e-6))));
        }
        return run.finish();
    }

    @Test
    void the_built_in_ones_are_installed() {
        assertThat(CaptureMeasurer.withInstalled().refused()).isEmpty();
        List<String> ids = INSTALLED.stream()
                .flatMap(it -> feed(it, 0, false).stream())
                .map(Result::id)
                .toList();
        assertThat(ids)
                .contains(
                        "frequency",
                        "period",
                        "duty",
                        "pulse-duration",
                        "transition.rise",
                        "transition.fall",
                        "mean-voltage",
                        "rms-voltage",
                        "pulse-separation",
                        "overshoot.rise",
                        "overshoot.fall",
                        "undershoot.rise",
                        "undershoot.fall",
                        "input-duty",
                        "input-pulse-duration",
                        "period-jitter.rms",
                        "period-jitter.peak-to-peak");
    }

    @Test
    void ids_are_unique_and_well_formed() {
        Set<String> ids = new HashSet<>();
        Set<String> resultIds = new HashSet<>();
        for (Measurement measurement : INSTALLED) {
            assertThat(measurement.id()).matches("[A-Za-z0-9-]+");
            assertThat(ids.add(measurement.id())).isTrue();
            for (Result result : feed(measurement, 0, false)) {
                assertThat(result.id()).matches("[A-Za-z0-9.-]+");
                assertThat(resultIds.add(result.id())).isTrue();
            }
        }
    }

    @TestFactory
    List<DynamicTest> each_measurement_keeps_the_contract() {
        List<DynamicTest> tests = new ArrayList<>();
        for (Measurement it : INSTALLED) {
            tests.add(DynamicTest.dynamicTest(it.id() + " says what it measures, with a unit", () -> {
                assertThat(it.title()).isNotBlank();
                assertThat(feed(it, 0, false)).isNotEmpty().allSatisfy(result -> {
                    assertThat(result.label()).isNotBlank();
                    assertThat(result.unit()).isIn("V", "s", "Hz", "%", "");
                });
            }));
            tests.add(DynamicTest.dynamicTest(it.id() + " gives a reason where nothing counts", () -> {
                assertReasons(feed(it, 0, false));
                assertReasons(feed(it, 10, true));
            }));
            tests.add(DynamicTest.dynamicTest(it.id() + " gives the same again", () -> {
                assertThat(feed(it, 100, false)).isEqualTo(feed(it, 100, false));
            }));
            tests.add(DynamicTest.dynamicTest(it.id() + " gives finite numbers under the same ids", () -> {
                List<Result> some = feed(it, 100, false);
                assertThat(some.stream().map(Result::id).toList())
                        .isEqualTo(feed(it, 0, false).stream().map(Result::id).toList());
                some.forEach(result -> assertFinite(result.outcome()));
                feed(it, 1, false).forEach(result -> assertFinite(result.outcome()));
            }));
        }
        return tests;
    }

    private static void assertReasons(List<Result> results) {
        for (Result result : results) {
            assertThat(result.outcome()).isInstanceOf(Outcome.Absent.class);
            assertThat(((Outcome.Absent) result.outcome()).reason())
                    .isNotBlank()
                    .doesNotEndWith(".");
        }
    }

    private static void assertFinite(Outcome outcome) {
        if (outcome instanceof Outcome.OfCycles cycles) {
            Statistic statistic = cycles.statistic();
            for (double number : new double[] {
                statistic.mean(), statistic.min(), statistic.max(), statistic.sd(), statistic.u(), statistic.u95()
            }) {
                assertThat(number).isFinite();
            }
            assertThat(statistic.u95()).isGreaterThanOrEqualTo(statistic.u());
        } else if (outcome instanceof Outcome.Single single) {
            assertThat(single.value().value()).isFinite();
            assertThat(single.value().u()).isFinite();
            assertThat(single.value().u95()).isFinite();
        }
    }

    private static Measurement measurement(String id, String resultId, boolean fails) {
        return new Measurement() {
            @Override
            public String id() {
                return id;
            }

            @Override
            public String title() {
                return "A measurement of the test";
            }

            @Override
            public Run start(ChannelContext channel) {
                return new Run() {
                    @Override
                    public void cycle(Cycle cycle) {
                        if (fails && cycle.index() == 3) {
                            throw new IllegalStateException("the fourth cycle is too much");
                        }
                    }

                    @Override
                    public List<Result> finish() {
                        return List.of(new Result(resultId, "Test", "", new Outcome.Absent("nothing was measured")));
                    }
                };
            }
        };
    }

    @Test
    void two_with_the_same_id_or_result_are_refused() {
        assertThatThrownBy(
                        () -> new CaptureMeasurer(List.of(measurement("a", "x", false), measurement("a", "y", false))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("id a");
        assertThatThrownBy(
                        () -> new CaptureMeasurer(List.of(measurement("a", "x", false), measurement("b", "x", false))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("id x");
    }

    @Test
    void one_that_fails_says_so_and_the_others_finish() throws IOException {
        List<Measurement> all = new ArrayList<>(INSTALLED);
        all.add(0, measurement("broken", "broken.result", true));
        Capture capture = Measured.capture(TestSignal.at(100e3, 0.2).carrier(200, 1e-3, 0.3));
        CaptureMeasurement measured =
                new CaptureMeasurer(all).measure(capture, Map.of(), PulseSettings.defaults(), 50, Progress.NONE);
        ChannelMeasurement channel = measured.channels().get(0);
        Outcome outcome = channel.results().get("broken.result").outcome();
        assertThat(((Outcome.Absent) outcome).reason()).contains("broken").contains("the fourth cycle is too much");
        assertThat(channel.results().get("duty").outcome()).isInstanceOf(Outcome.OfCycles.class);
    }

    @Test
    void transitions_come_before_the_cycle_that_they_begin_or_lie_in_and_each_once() {
        List<String> order = new ArrayList<>();
        Measurement recorder = new Measurement() {
            @Override
            public String id() {
                return "recorder";
            }

            @Override
            public String title() {
                return "Writes down what it is given";
            }

            @Override
            public Run start(ChannelContext channel) {
                return new Run() {
                    @Override
                    public void transition(Transition transition, boolean disturbed) {
                        order.add((transition.rising() ? "rise " : "fall ") + disturbed);
                    }

                    @Override
                    public void cycle(Cycle cycle) {
                        order.add("cycle " + cycle.index());
                    }

                    @Override
                    public List<Result> finish() {
                        return List.of();
                    }
                };
            }
        };
        // falls at 0.5 ms, then rises at 4 and 9 ms with falls 1.5 ms later: one whole cycle
        TestSignal signal = TestSignal.at(100e3, 12e-3);
        signal.pieces().add(new TestSignal.Piece(-1, 0.5e-3, 1));
        signal.pieces().add(new TestSignal.Piece(4e-3, 5.5e-3, 1));
        signal.pieces().add(new TestSignal.Piece(9e-3, 10.5e-3, 1));
        try {
            new CaptureMeasurer(List.of(recorder))
                    .measure(Measured.capture(signal), Map.of(), PulseSettings.defaults(), 50, Progress.NONE)
                    .close();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        assertThat(order).containsExactly("fall true", "rise false", "fall false", "cycle 0", "rise true", "fall true");
    }
}
