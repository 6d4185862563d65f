// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.dutywright.diagnosis.Pictures.assertTop;
import static org.dutywright.diagnosis.Pictures.check;
import static org.dutywright.diagnosis.Pictures.one;
import static org.dutywright.diagnosis.Pictures.sweep;
import static org.dutywright.diagnosis.Pictures.top;
import static org.dutywright.diagnosis.Pictures.two;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.Fitness;
import org.junit.jupiter.api.Test;

/** The picture of each fault is common practice, no source; the numbers are made up. */
class SuspectsInRecordingTest {
    @Test
    void nothingIsSuspectedWhereEverythingConforms() throws IOException {
        CheckResult result = check(one(t -> 30), two(t -> 30));
        assertThat(result.suspects()).hasSize(1);
        assertTop(result, Place.NONE, null);
        assertThat(result.suspects().get(0).weight()).isEqualTo(1);
    }

    @Test
    void aMissingChannelPointsToTheRecording() throws IOException {
        CheckResult result = check(one(t -> 30));
        assertTop(result, Place.RECORDING, null);
        assertThat(result.suspects().get(0).reasonsFor().get(0)).contains("signal2");
        assertThat(result.nextMeasurement()).contains("record all channels of the sensor");
    }

    @Test
    void exchangedLeadsAreFoundBeforeAnySensorIsBlamed() throws IOException {
        // signal1's column holds signal2 (low counted) and the other way round, so each is counted on the wrong state.
        MeasuredChannel column1 =
                MeasuredChannel.named("signal1").carrier(203, 0.001, 2, t -> 100 - (20 + 0.7 * sweep(t)));
        MeasuredChannel column2 =
                MeasuredChannel.named("signal2").carrier(200, 0, 2, t -> 100 - (10 + 0.35 * sweep(t)));
        CheckResult result = check(column1, column2);
        assertTop(result, Place.RECORDING, Kind.SWAPPED_LEADS, "signal1", "signal2");
        assertThat(top(result).weight()).isGreaterThan(0.7);
        assertThat(result.suspects()).noneMatch(it -> it.kind().equals(Optional.of(Kind.DRIFT)));
        assertThat(result.nextMeasurement()).contains("wiring diagram");
    }

    @Test
    void aChannelCountedOnItsOtherStateIsFound() throws IOException {
        MeasuredChannel inverted = MeasuredChannel.named("signal1").carrier(200, 0, 2, t -> 90 - 0.35 * sweep(t));
        CheckResult result = check(inverted, two(Pictures::sweep));
        assertTop(result, Place.RECORDING, Kind.SWAPPED_LEADS, "signal1");
        assertThat(top(result).reasonsFor().get(0)).contains("Counted on its low state");
    }

    @Test
    void aPoorRecordingIsSuspectedWhereNothingElseFails() throws IOException {
        Fitness poor = new Fitness("signal1.samplesPerPulse", Fitness.Grade.POOR, "7 samples a pulse");
        CheckResult result = Checks.check(
                Sensors.twin(),
                CheckSettings.none(),
                Checks.measurement(
                        List.of(poor), one(t -> 30).build(), two(t -> 30).build()));
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertTop(result, Place.RECORDING, null);
        assertThat(top(result).reasonsFor()).contains("7 samples a pulse.");
    }

    @Test
    void aValueOnItsLimitLeavesTheRecordingOrNothing() throws IOException {
        CheckResult result = check(
                MeasuredChannel.named("signal1").carrier(220, 0, 2, t -> 20.5).frequencyU(0.1), two(t -> 30));
        assertThat(result.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(result.suspects()).extracting(Suspect::place).containsExactly(Place.RECORDING, Place.NONE);
        assertThat(result.nextMeasurement()).contains("less uncertainty");
    }

    @Test
    void whatNoRuleKnowsIsSpreadEvenly() throws IOException {
        CheckResult result =
                check(one(t -> 30).count(EventKind.PERIOD_EXCURSION, 4).count(EventKind.RUNT, 3), two(t -> 30));
        // Counted but not listed: no place to look at.
        assertThat(result.suspects()).extracting(Suspect::weight).containsOnly(0.25);
        assertThat(top(result).reasonsFor()).contains("signal1.events.runt: 3 counted, 0 allowed.");
    }
}
