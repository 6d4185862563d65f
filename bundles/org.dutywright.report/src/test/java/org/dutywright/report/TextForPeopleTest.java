// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.EventSettings;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.RecorderSettings;
import org.junit.jupiter.api.Test;

/** The texts as people read them; the numbers are those of the examples. */
final class TextForPeopleTest {
    @Test
    void aMeasurementReadsAsAccepted() throws IOException {
        Golden.check("measure.txt", MeasureText.lines(Examples.measurement()));
    }

    @Test
    void settingsThatWereChangedAreListedAndNoOthers() throws IOException {
        CaptureMeasurement usual = Examples.measurement();
        CaptureMeasurement changed = new CaptureMeasurement(
                usual.capture(),
                PulseSettings.defaults().with(EventSettings.RUNT_SHARE, 15).with(RecorderSettings.TIME_BASE, 5),
                usual.fitness(),
                usual.channels());
        assertThat(MeasureText.lines(changed))
                .anyMatch(line -> line.matches("settings +runt\\.share 15 %, by default 10 %"))
                .anyMatch(line -> line.matches(" +instrument\\.time-base 5 ppm, by default 50 ppm"));
        assertThat(MeasureText.lines(usual)).noneMatch(line -> line.contains("by default"));
    }

    @Test
    void aFailedCheckReadsAsAccepted() throws IOException {
        Golden.check("check-fails.txt", CheckText.lines(CheckExamples.failing()));
    }

    @Test
    void aPassedCheckReadsAsAccepted() throws IOException {
        Golden.check("check-conforms.txt", CheckText.lines(CheckExamples.conforming()));
    }

    @Test
    void theVerdictIsTheLastLine() throws IOException {
        List<String> lines = CheckText.lines(CheckExamples.inconclusive());
        assertThat(lines.get(lines.size() - 1)).startsWith("verdict: inconclusive: signal1.transition.rise (");
    }

    @Test
    void aVerdictNamesEachFailedLineWithCountAndLimit() {
        assertThat(VerdictText.line(CheckExamples.conforming())).isEqualTo("conforms");
        assertThat(VerdictText.line(CheckExamples.failing()))
                .startsWith(
                        "does not conform: signal1.events.missing-pulse (2500, allowed 0); signal2.signal (stuck-low")
                .contains("; agreement (largest difference 12.5 % of travel, allowed 4 %");
    }

    @Test
    void linesNeverCarryANumberThatIsNone() throws IOException {
        assertThat(CheckText.lines(CheckExamples.failing()))
                .noneMatch(line -> line.contains("NaN") || line.contains("Infinity"));
    }

    @Test
    void whereNothingIsWrongNoWorkOnTheVehicleIsProposed() throws IOException {
        assertThat(CheckText.lines(CheckExamples.failing())).anyMatch(line -> line.contains("can hurt"));
        assertThat(CheckText.lines(CheckExamples.conforming())).noneMatch(line -> line.contains("can hurt"));
    }
}
