// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.api.SoftAssertions;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.CycleTable;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Statistic;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The captures measured here and by outside/measure.py with NumPy and SciPy, whose versions and results outside/expected.json
 * holds. Both see the same bytes, so neither noise nor jitter may make a difference but where both put an edge by other
 * means. Two such instants differ by no more than {@link #edge}: three standard deviations of the noise, or one code, over
 * the slope of the edge.
 */
class OutsideMeasurementTest {
    @TempDir
    Path folder;

    private final SoftAssertions softly = new SoftAssertions();
    private JsonNode expected;
    private double edge;
    private double period;
    private double swing;
    private double volts;
    private double stepSeconds;

    static List<String> names() {
        return OutsideCaptures.NAMES;
    }

    @ParameterizedTest
    @MethodSource("names")
    void another_tool_finds_the_same(String name) throws Exception {
        Path csv = folder.resolve(name + ".csv");
        OutsideCaptures.write(name, csv);
        expected = expected().get("captures").get(name);
        assertThat(sha256(csv))
                .as("the capture is the one that was measured outside")
                .isEqualTo(text("sha256"));
        tolerate(name);

        try (Capture capture = Captures.open(List.of(csv), ReadSettings.none(), Progress.NONE);
                CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                        .measure(capture, Map.of("signal1", plan(name)), PulseSettings.defaults(), 50, Progress.NONE)) {
            stepSeconds = capture.timeBase().stepSeconds();
            compare(measured.channels().get(0));
        }
    }

    private void tolerate(String name) throws Exception {
        swing = number("highLevel") - number("lowLevel");
        period = number("period");
        double step = OutsideCaptures.scenario(name)
                .recording()
                .quantisation()
                .orElseThrow()
                .stepVolts();
        double duration = Math.max(number("transition.rise"), number("transition.fall"));
        edge = duration / 0.8 * Math.max(3 * number("noise"), step) / swing;
        // both levels are means of many samples, but not of the same ones: at least one a cycle
        volts = 4 * number("noise") / Math.sqrt(number("cycles")) + 0.02 * step;
    }

    private void compare(ChannelMeasurement channel) throws IOException {
        List<Cycle> cycles = cycles(channel);
        assertThat(cycles).hasSize(expected.get("cycles").intValue());
        double edgesOfAll = 2 * edge / cycles.size();

        close("lowLevel", channel.levels().orElseThrow().low().value(), volts);
        close("highLevel", channel.levels().orElseThrow().high().value(), volts);
        // only the first and the last edge are not shared by two cycles
        close("frequency", of("frequency", channel).mean(), edgesOfAll / period / period);
        close("period", of("period", channel).mean(), edgesOfAll);
        close("duty", of("duty", channel).mean(), 100 * edge / period);
        close("pulse-duration", of("pulse-duration", channel).mean(), edge);
        close("period.sd", of("period", channel).sd(), edge);
        close("duty.sd", of("duty", channel).sd(), 100 * edge / period);
        close("period-jitter.rms", single("period-jitter.rms", channel), edge);
        close("period-jitter.peak-to-peak", single("period-jitter.peak-to-peak", channel), 4 * edge);
        close("cycle-jitter.rms", single("cycle-jitter.rms", channel), 2 * edge);
        close("mean-voltage", single("mean-voltage", channel), swing * edgesOfAll / period);
        close("rms-voltage", single("rms-voltage", channel), swing * edgesOfAll / period);
        // that of the mean edge there, the median of single ones here: a line between two samples cuts the corner of an
        // edge
        close("transition.rise", single("transition.rise", channel), 2 * edge + stepSeconds / 4);
        close("transition.fall", single("transition.fall", channel), 2 * edge + stepSeconds / 4);
        close("period.lag-1", lag1(cycles), 0.1);
        for (int i = 0; i < cycles.size(); i++) {
            close("periods", i, cycles.get(i).periodSeconds(), 2 * edge);
            close("duties", i, cycles.get(i).dutyPercent(), 200 * edge / period);
        }
        softly.assertAll();
    }

    private static Statistic of(String id, ChannelMeasurement channel) {
        return ((Outcome.OfCycles) channel.results().get(id).outcome()).statistic();
    }

    private static double single(String id, ChannelMeasurement channel) {
        return ((Outcome.Single) channel.results().get(id).outcome()).value().value();
    }

    private void close(String id, double here, double tolerance) {
        softly.assertThat(here).as(id).isCloseTo(number(id), within(tolerance));
    }

    private void close(String list, int i, double here, double tolerance) {
        softly.assertThat(here)
                .as("%s of cycle %d", list, i)
                .isCloseTo(expected.get(list).get(i).doubleValue(), within(tolerance));
    }

    private static double lag1(List<Cycle> cycles) {
        double mean =
                cycles.stream().mapToDouble(Cycle::periodSeconds).average().orElseThrow();
        double products = 0;
        double squares = 0;
        for (int i = 0; i < cycles.size(); i++) {
            double off = cycles.get(i).periodSeconds() - mean;
            squares += off * off;
            products += i > 0 ? off * (cycles.get(i - 1).periodSeconds() - mean) : 0;
        }
        return products / squares;
    }

    private static List<Cycle> cycles(ChannelMeasurement channel) throws IOException {
        List<Cycle> cycles = new ArrayList<>();
        CycleTable.Cursor cursor = channel.cycles().cursor();
        for (Cycle cycle = cursor.next(); cycle != null; cycle = cursor.next()) {
            cycles.add(cycle);
        }
        return cycles;
    }

    private static ChannelPlan plan(String name) throws Exception {
        boolean high = OutsideCaptures.scenario(name).channels().get(0).activeHigh();
        return new ChannelPlan(
                Optional.of(Role.PWM),
                Optional.of(high ? ActiveLevel.HIGH : ActiveLevel.LOW),
                Optional.empty(),
                OptionalDouble.empty());
    }

    private double number(String id) {
        return expected.get(id).doubleValue();
    }

    private String text(String id) {
        return expected.get(id).textValue();
    }

    /** The tests of a module run in its folder. */
    private static JsonNode expected() throws IOException {
        return new ObjectMapper().readTree(Path.of("outside", "expected.json").toFile());
    }

    private static String sha256(Path file) throws Exception {
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
        return HexFormat.of().formatHex(digest);
    }
}
