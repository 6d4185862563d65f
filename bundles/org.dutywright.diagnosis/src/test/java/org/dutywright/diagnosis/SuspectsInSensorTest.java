// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.dutywright.diagnosis.Pictures.assertTop;
import static org.dutywright.diagnosis.Pictures.check;
import static org.dutywright.diagnosis.Pictures.one;
import static org.dutywright.diagnosis.Pictures.sweep;
import static org.dutywright.diagnosis.Pictures.top;
import static org.dutywright.diagnosis.Pictures.two;
import static org.dutywright.diagnosis.Pictures.weight;

import java.io.IOException;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.DoubleUnaryOperator;
import org.dutywright.diagnosis.Suspect.Kind;
import org.dutywright.diagnosis.Suspect.Place;
import org.dutywright.pulse.EventKind;
import org.dutywright.sensor.Sensor;
import org.junit.jupiter.api.Test;

/** The picture of each fault is common practice, no source; the numbers are made up. */
class SuspectsInSensorTest {
    @Test
    void aWrongCarrierWithPerfectLevelsIsTheSensors() throws IOException {
        assertTop(
                check(MeasuredChannel.named("signal1").carrier(231.5, 0, 2, t -> 20.5), two(t -> 30)),
                Place.SENSOR,
                Kind.FREQUENCY,
                "signal1");
        CheckResult all = check(
                MeasuredChannel.named("signal1").carrier(400, 0, 2, t -> 20.5),
                MeasuredChannel.named("signal2").carrier(402, 0, 2, t -> 41));
        assertThat(weight(all, Place.RECORDING)).isGreaterThan(0.2);
    }

    @Test
    void aConstantDifferenceWithPerfectLevelsIsTheSensors() throws IOException {
        CheckResult result = check(one(t -> 20 + sweep(t) / 2), two(t -> 28 + sweep(t) / 2));
        assertTop(result, Place.SENSOR, Kind.DRIFT, "signal1", "signal2");
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("signal1 reads 8.0 % of travel less than signal2"))
                .anyMatch(it -> it.contains("an offset"));
        assertThat(top(result).reasonsAgainst()).anyMatch(it -> it.contains("does not tell which"));
    }

    @Test
    void theChannelOffItsEndPointsIsTheOneBlamed() throws IOException {
        CheckResult result = check(one(Pictures::sweep), two(t -> 12 + sweep(t)));
        assertTop(result, Place.SENSOR, Kind.DRIFT, "signal2");
    }

    @Test
    void aDifferenceThatGrowsWithTheTravelIsAGain() throws IOException {
        CheckResult result = check(one(t -> 0.8 * sweep(t)), two(Pictures::sweep));
        assertThat(top(result).reasonsFor()).anyMatch(it -> it.contains("a wrong gain"));
    }

    @Test
    void aDutyThatStandsStillWhileTheOtherMovesIsSaid() throws IOException {
        CheckResult result = check(one(t -> 30), two(Pictures::sweep));
        assertTop(result, Place.SENSOR, Kind.DRIFT, "signal1", "signal2");
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("The duty of signal1 stands still while signal2 moves"));
    }

    @Test
    void bothOffTogetherPointToTheLinkage() throws IOException {
        CheckResult result = check(one(t -> -12), two(t -> -12));
        assertTop(result, Place.LINKAGE, Kind.DRIFT, "signal1", "signal2");
    }

    @Test
    void aDifferenceAtOnePlaceOfTheTravelIsAWornSpot() throws IOException {
        DoubleUnaryOperator worn = t -> {
            double travel = sweep(t);
            return Math.abs(travel - 40) < 4 ? travel + 20 : travel;
        };
        MeasuredChannel one = one(worn).count(EventKind.DUTY_JUMP, 8);
        // Slow enough for the fault to be confirmed: the text allows no duty jump.
        CheckResult result = Checks.check(
                Sensors.twin(Map.of("duty-jump", new Sensor.EventRule(OptionalLong.of(0)))),
                CheckSettings.none(),
                one.build(),
                two(Pictures::sweep).build());
        assertTop(result, Place.SENSOR, Kind.WORN_SPOT, "signal1");
        assertThat(top(result).reasonsFor())
                .anyMatch(it -> it.contains("Between 36 and 44 % of travel") && it.contains("on 4 passes"));
    }
}
