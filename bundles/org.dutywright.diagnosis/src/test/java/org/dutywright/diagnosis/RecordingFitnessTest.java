// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a finding about the recording does to a verdict, and what only the sensor text tells of a recording. */
class RecordingFitnessTest {
    private static final CheckSettings SETTINGS =
            new CheckSettings(OptionalDouble.of(12), Optional.of(Position.RELEASED));

    private static CheckResult check(MeasuredChannel signal1, Fitness... fitness) throws IOException {
        return Checks.check(
                Sensors.twin(),
                SETTINGS,
                Checks.measurement(
                        List.of(fitness),
                        signal1.build(),
                        MeasuredChannel.named("signal2")
                                .carrier(203, 0.001, 2, t -> 20)
                                .build()));
    }

    private static MeasuredChannel signal1() {
        return MeasuredChannel.named("signal1");
    }

    /** The lines of signal1 that are not as they are in a good recording. */
    private static Set<String> changed(CheckResult result) throws IOException {
        Map<String, Line> good = Checks.lines(check(signal1()));
        return result.lines().stream()
                .filter(line -> line.item().startsWith("signal1."))
                .filter(line -> line.result() != good.get(line.item()).result())
                .map(line -> line.item().substring("signal1.".length()))
                .collect(Collectors.toSet());
    }

    @ParameterizedTest
    @CsvSource({
        "clipping, lowLevel highLevel transition.rise transition.fall events.level-shift",
        "baseLine, lowLevel highLevel",
        "samplesPerEdge, transition.rise transition.fall",
        "levelResolution, lowLevel highLevel transition.rise transition.fall events.level-shift",
        "stretchedPulses, duty duty.released"
    })
    void aPoorRecordingMakesInconclusiveWhatRestsOnIt(String aspect, String lines) throws IOException {
        CheckResult result = check(signal1(), new Fitness("signal1." + aspect, Grade.POOR, "a fact"));
        List<String> expected = Pattern.compile(" ").splitAsStream(lines).toList();
        assertThat(changed(result)).containsExactlyInAnyOrderElementsOf(expected);
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(Checks.lines(result).get("signal1." + expected.get(0)).reason())
                .contains("a fact");
    }

    @Test
    void aRateThatIsInDoubtLeavesTheDutyAlone() throws IOException {
        CheckResult result = check(signal1(), new Fitness("capture.sampleRate", Grade.POOR, "a fact"));
        assertThat(changed(result)).containsExactlyInAnyOrder("frequency", "transition.rise", "transition.fall");
    }

    @Test
    void pairsOfExtremesBearOnEverything() throws IOException {
        CheckResult result = check(signal1(), new Fitness("signal1.minMaxPairs", Grade.POOR, "a fact"));
        assertThat(result.lines())
                .filteredOn(line ->
                        line.item().startsWith("signal1.") && !line.item().equals("signal1.signal"))
                .noneMatch(line -> line.result() == LineResult.PASS);
    }

    @Test
    void levelsOfARecordingCoupledByAcAreNotJudgedAndTheRestIs() throws IOException {
        CheckResult result = check(signal1(), new Fitness("signal1.coupling", Grade.UNFIT, "a fact"));
        assertThat(changed(result)).containsExactlyInAnyOrder("lowLevel", "highLevel", "events.level-shift");
        assertThat(Checks.lines(result).get("signal1.lowLevel").result()).isEqualTo(LineResult.NOT_JUDGED);
        assertThat(Checks.lines(result).get("signal1.signal").result()).isEqualTo(LineResult.PASS);
        assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
    }

    @ParameterizedTest
    // 12 V and 0.4 V behind a probe of 10:1, 20:1, 100:1 that the instrument does not know of, and the other way round
    @CsvSource({"0.04, 1.2, 10", "0.02, 0.6, 20", "0.004, 0.12, 100", "4, 120, 0.1", "8, 240, 0.05", "40, 1200, 0.01"})
    void levelsOffByTheFactorOfAProbeNameTheScaleAndAreInconclusive(double low, double high, String scale)
            throws IOException {
        CheckResult result = check(signal1().levels(low, high));
        Fitness found = result.measurement().fitness().stream()
                .filter(it -> it.item().equals("signal1.probeFactor"))
                .findFirst()
                .orElseThrow();
        assertThat(found.grade()).isEqualTo(Grade.POOR);
        assertThat(found.reason()).contains("--scale signal1=" + scale);
        assertThat(Checks.lines(result).get("signal1.highLevel").result()).isEqualTo(LineResult.INCONCLUSIVE);
        assertThat(Checks.lines(result).get("signal1.highLevel").measured()).hasValue(high);
        assertThat(Checks.lines(result).get("signal1.frequency").result()).isEqualTo(LineResult.PASS);
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
    }

    @ParameterizedTest
    // a sagging high level, one that is half, and a lifted low level that no factor explains
    @CsvSource({"0.4, 8.5", "0.2, 6", "0.5, 1.2", "0.04, 2.5"})
    void levelsThatNoProbeExplainsFail(double low, double high) throws IOException {
        CheckResult result = check(signal1().levels(low, high));
        assertThat(result.measurement().fitness()).noneMatch(it -> it.item().contains("probe"));
        assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    }

    @Test
    void aRateTooLowForTheCarrierOfTheSensorMayShowAnAlias() throws IOException {
        // 800 S/s are four samples a period of 200 Hz, and fewer of the 220 Hz that the sensor may have
        CheckResult result = check(signal1());
        assertThat(result.measurement().fitness()).noneMatch(it -> it.reason().contains("alias"));
        CheckResult slow = Checks.check(
                Sensors.twin(),
                SETTINGS,
                Checks.atRate(
                        800, signal1().build(), MeasuredChannel.named("signal2").build()));
        assertThat(slow.measurement().fitness())
                .anyMatch(it -> it.item().equals("signal1.samplesPerPulse")
                        && it.grade() == Grade.UNFIT
                        && it.reason().contains("alias")
                        && it.reason().contains("record at 880.0 Hz"));
        assertThat(slow.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(slow.lines()).noneMatch(it -> it.item().startsWith("signal") && it.result() == LineResult.PASS);
    }
}
