// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.dutywright.capture.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TruthTest {

    // Rounding of sums of a thousand numbers near 1.
    private static final double ROUNDING = 1e-9;

    @TempDir
    Path folder;

    private JsonNode truth(Scenario scenario) throws IOException {
        Path csv = folder.resolve("capture.csv");
        Simulator.write(scenario, csv, Progress.NONE);
        return new ObjectMapper().readTree(Simulator.truthFile(csv).toFile());
    }

    private static List<String> events(JsonNode truth) {
        List<String> events = new ArrayList<>();
        truth.get("faults").forEach(fault -> events.add(fault.get("event").asText()));
        return events;
    }

    @Test
    void theTruthNamesWhatWasMade() throws IOException {
        JsonNode truth = truth(Scenes.oneSecond());
        assertThat(truth.get("schema").asText()).isEqualTo("dutywright.truth/1");
        assertThat(truth.get("scenario").asText()).isEqualTo("scene");
        assertThat(truth.get("recording").get("samples").asLong()).isEqualTo(100_000);
        JsonNode channel = truth.get("channels").get(0);
        assertThat(channel.get("name").asText()).isEqualTo("signal1");
        assertThat(channel.get("activeLevel").asText()).isEqualTo("high");
        assertThat(channel.get("lowLevel").asDouble()).isEqualTo(0.4);
        assertThat(channel.get("highLevel").asDouble()).isEqualTo(12.4);
        // Active edges at 0, 5 … 995 ms: 199 whole cycles of 5 ms.
        assertThat(channel.get("cycles").asLong()).isEqualTo(199);
        assertThat(channel.get("frequencyHz").asDouble()).isCloseTo(200, within(ROUNDING));
        assertThat(channel.get("dutyPercent").get("mean").asDouble()).isCloseTo(25, within(ROUNDING));
        assertThat(channel.get("dutyReleasedPercent").isNull()).isTrue();
        assertThat(truth.get("faults")).isEmpty();
        assertThat(truth.get("expect").isNull()).isTrue();
    }

    @Test
    void theDutiesOfASweepAreThoseOfItsCycles() throws IOException {
        ChannelModel channel =
                Scenes.withCarrier(Scenes.channel("signal1", true, 0), 200, 50, new DutyLaw.EndPoints(10, 45));
        Profile travel = new Profile(List.of(new Profile.Point(0, 0), new Profile.Point(1, 100)));
        JsonNode truth = truth(Scenes.scenario(1, Scenes.recording(0, 1), travel, List.of(channel)))
                .get("channels")
                .get(0);
        // Cycles start at 2.5, 7.5 … 992.5 ms (the one at 997.5 ms does not end inside): travel 0.25 % to 99.25 %.
        assertThat(truth.get("cycles").asLong()).isEqualTo(199);
        assertThat(truth.get("dutyPercent").get("min").asDouble()).isCloseTo(10 + 0.35 * 0.25, within(ROUNDING));
        assertThat(truth.get("dutyPercent").get("max").asDouble()).isCloseTo(10 + 0.35 * 99.25, within(ROUNDING));
        assertThat(truth.get("dutyPercent").get("mean").asDouble()).isCloseTo(10 + 0.35 * 49.75, within(ROUNDING));
        assertThat(truth.get("dutyReleasedPercent").asDouble()).isEqualTo(10);
        assertThat(truth.get("dutyPressedPercent").asDouble()).isEqualTo(45);
    }

    @Test
    void cyclesThatTouchAPauseOrALossOfSupplyAreNotCounted() throws IOException {
        Recording recording = new Recording(
                Scenes.RATE_HZ,
                0,
                1,
                java.util.Optional.empty(),
                List.of(new Recording.Pause(0.502, 0.512)),
                Recording.Format.standard());
        JsonNode truth = truth(Scenes.scenario(
                recording,
                List.of(Scenes.channel("signal1", true, 25)),
                new Fault.SupplyLoss("signal1", 0.203, 0.22, 0.03, 0.4, OptionalDouble.empty(), true)));
        // Edges at 0 to 200 ms: 40 cycles; restart at 250 ms, edges at 250 to 995 ms: 149 cycles, of which those
        // from 500, 505 and 510 ms touch the pause.
        assertThat(truth.get("channels").get(0).get("cycles").asLong()).isEqualTo(186);
        assertThat(truth.get("channels").get(0).get("frequencyHz").asDouble()).isCloseTo(200, within(ROUNDING));
    }

    @Test
    void missingPulsesAreTrueFromTheFirstOneDueToTheNextOnePresent() throws IOException {
        JsonNode truth = truth(Scenes.oneSecond(
                new Fault.MissingPulse("signal1", 0.602, 3), new Fault.MissingPulse("signal1", 0.302, 2)));
        assertThat(events(truth)).containsExactly("missing-pulse", "dropout");
        JsonNode first = truth.get("faults").get(0);
        assertThat(first.get("kind").asText()).isEqualTo("missing-pulse");
        assertThat(first.get("channel").asText()).isEqualTo("signal1");
        assertThat(first.get("startS").asDouble()).isCloseTo(0.305, within(ROUNDING));
        assertThat(first.get("endS").asDouble()).isCloseTo(0.315, within(ROUNDING));
    }

    @Test
    void aHiddenSignalIsNamedByThePulsesItHides() throws IOException {
        JsonNode truth = truth(Scenes.oneSecond(
                new Fault.SignalOpen("signal1", 0.102, 0.103, 12.4),
                new Fault.SignalOpen("signal1", 0.202, 0.206, 12.4),
                new Fault.SignalOpen("signal1", 0.302, 0.352, 12.4),
                new Fault.SupplyLoss("signal1", 0.402, 0.42, 0.02, 12.4, OptionalDouble.empty(), true),
                new Fault.Stuck("signal1", 0.9, 1, false, 0.4)));
        assertThat(events(truth)).containsExactly("null", "missing-pulse", "dropout", "dropout", "stuck-low");
    }

    @Test
    void everyOtherFaultIsNamedByItsEvent() throws IOException {
        JsonNode truth = truth(Scenes.oneSecond(
                new Fault.Runt("signal1", 0.1, 1, 40),
                new Fault.Bounce("signal1", 0.15, 1, 20e-6, true),
                new Fault.ExtraPulse("signal1", 0.2025, 100e-6, 100),
                new Fault.ExtraPulse("signal1", 0.2525, 100e-6, 60),
                new Fault.GroundLift("signal1", 0.3, 0.4, 1, false),
                new Fault.Frequency("signal1", 0.45, 0.5, 0.8),
                new Fault.DutyJump("signal1", 0.55, 0.6, 0, 5, 8),
                new Fault.Ratio("signal1", 0.65, 0.7, 1, 2),
                new Fault.NoiseBurst("signal1", 0.75, 0.8, 0.1),
                new Fault.LevelShift("signal1", 0.85, 0.9, 0.1, 0)));
        assertThat(events(truth))
                .containsExactly(
                        "runt",
                        "bounce",
                        "extra-pulse",
                        "runt",
                        "level-shift",
                        "period-excursion",
                        "duty-jump",
                        "null",
                        "null",
                        "null");
    }

    @Test
    void levelsCarryWhatFaultsAddForTheWholeRecording() throws IOException {
        JsonNode channel = truth(Scenes.oneSecond(
                        new Fault.GroundLift("signal1", 0, 1, 1.25, false),
                        new Fault.LevelShift("signal1", 0, 1, 0.25, -2),
                        new Fault.LevelShift("signal1", 0.5, 1, 3, 3)))
                .get("channels")
                .get(0);
        assertThat(channel.get("lowLevel").asDouble()).isCloseTo(0.4 + 1.25 + 0.25, within(ROUNDING));
        assertThat(channel.get("highLevel").asDouble()).isCloseTo(12.4 - 2, within(ROUNDING));
    }

    @Test
    void anOddFirstPeriodIsNoCycleOfTheTruth() throws IOException {
        JsonNode channel = truth(Scenes.oneSecond(
                        new Fault.SupplyLoss("signal1", 0.203, 0.22, 0.03, 0.4, OptionalDouble.of(0.01), true)))
                .get("channels")
                .get(0);
        // 40 cycles before; the odd one from 250 to 260 ms; 147 from there to 995 ms.
        assertThat(channel.get("cycles").asLong()).isEqualTo(187);
        assertThat(channel.get("frequencyHz").asDouble()).isCloseTo(200, within(ROUNDING));
    }
}
