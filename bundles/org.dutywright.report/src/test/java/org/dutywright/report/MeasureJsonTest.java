// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.capture.ReadSettings;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.EdgeInstants;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Result;
import org.dutywright.pulse.Role;
import org.dutywright.pulse.Statistic;
import org.junit.jupiter.api.Test;

/** Field by field against the published schema dutywright.measure/1; the numbers are those of {@link Examples}. */
final class MeasureJsonTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static String text(CaptureMeasurement measurement, RunSettings run) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        MeasureJson.write(measurement, run, out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static JsonNode document() throws IOException {
        return MAPPER.readTree(text(Examples.measurement(), Examples.RUN));
    }

    private static JsonNode channel(int index) throws IOException {
        return document().get("channels").get(index);
    }

    private static List<String> names(JsonNode object) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    @Test
    void theDocumentNamesItsSchemaFirst() throws IOException {
        assertThat(names(document())).containsExactly("schema", "capture", "settings", "channels");
        assertThat(document().get("schema").asText()).isEqualTo("dutywright.measure/1");
    }

    @Test
    void theCaptureBlockHasEveryFieldOfTheSchema() throws IOException {
        JsonNode capture = document().get("capture");
        assertThat(names(capture))
                .containsExactly(
                        "sources", "sampleRateHz", "samples", "startS", "durationS", "gaps", "guessed", "fitness");
        assertThat(capture.get("sources").toString())
                .isEqualTo("[{\"path\":\"yard.csv\",\"sha256\":\"" + "ab".repeat(32) + "\"}]");
        assertThat(capture.get("sampleRateHz").asDouble()).isEqualTo(1000);
        assertThat(capture.get("samples").asLong()).isEqualTo(400);
        assertThat(capture.get("startS").asDouble()).isEqualTo(-0.1);
        // last segment: 200 samples of 1 ms from 0.4 s end at 0.6 s, 0.7 s after the start at -0.1 s
        assertThat(capture.get("durationS").asDouble()).isEqualTo(0.7);
        // the last sample before the gap is number 199: -0.1 + 0.199
        assertThat(capture.get("gaps").size()).isEqualTo(1);
        assertThat(capture.get("gaps").get(0).get("startS").asDouble()).isEqualTo(0.099);
        assertThat(capture.get("gaps").get(0).get("endS").asDouble()).isEqualTo(0.4);
        assertThat(capture.get("guessed").toString()).isEqualTo("{\"delimiter\":\"semicolon\"}");
        assertThat(capture.get("fitness").toString())
                .isEqualTo("[{\"item\":\"signal1.samplesPerPulse\",\"result\":\"poor\","
                        + "\"reason\":\"5 samples a pulse\"}]");
    }

    @Test
    void aPwmChannelHasEveryFieldOfTheSchema() throws IOException {
        JsonNode channel = channel(0);
        assertThat(names(channel))
                .contains(
                        "name",
                        "role",
                        "unit",
                        "activeLevel",
                        "status",
                        "lowLevel",
                        "highLevel",
                        "cycles",
                        "cyclesDisturbed",
                        "frequencyHz",
                        "periodS",
                        "dutyPercent",
                        "pulseDurationS",
                        "pulseSeparationS",
                        "dutyAtInputPercent",
                        "pulseDurationAtInputS",
                        "overshootPercent",
                        "undershootPercent",
                        "transitionS",
                        "meanVoltage",
                        "rmsVoltage",
                        "periodJitterS",
                        "eventCounts",
                        "eventsListed",
                        "events");
        assertThat(channel.get("name").asText()).isEqualTo("signal1");
        assertThat(channel.get("role").asText()).isEqualTo("pwm");
        assertThat(channel.get("unit").asText()).isEqualTo("V");
        assertThat(channel.get("activeLevel").asText()).isEqualTo("high");
        assertThat(channel.get("status").asText()).isEqualTo("ok");
        assertThat(channel.get("lowLevel").toString()).isEqualTo("{\"value\":0.4,\"u\":0.001,\"u95\":0.002}");
        assertThat(channel.get("highLevel").toString()).isEqualTo("{\"value\":12.0,\"u\":0.003,\"u95\":0.006}");
        assertThat(channel.get("cycles").asLong()).isEqualTo(3);
        assertThat(channel.get("cyclesDisturbed").asLong()).isEqualTo(1);
    }

    @Test
    void eachStatisticHasItsSixFields() throws IOException {
        JsonNode channel = channel(0);
        assertThat(channel.get("frequencyHz").toString())
                .isEqualTo("{\"mean\":200.003,\"min\":199.5,\"max\":200.5,\"sd\":0.25,\"u\":0.012,\"u95\":0.024}");
        assertThat(channel.get("periodS").toString())
                .isEqualTo("{\"mean\":0.005,\"min\":0.0049,\"max\":0.0051,\"sd\":2.0E-5,\"u\":3.0E-7,\"u95\":6.0E-7}");
        assertThat(channel.get("dutyPercent").toString())
                .isEqualTo("{\"mean\":10.25,\"min\":9.5,\"max\":45.5,\"sd\":11.5,\"u\":0.004,\"u95\":0.008}");
        assertThat(channel.get("pulseDurationS").toString())
                .isEqualTo("{\"mean\":5.1E-4,\"min\":4.7E-4,\"max\":0.0023,\"sd\":5.0E-4,\"u\":2.0E-7,\"u95\":4.0E-7}");
    }

    @Test
    void overshootIsThatOfEachDirection() throws IOException {
        JsonNode channel = channel(0);
        assertThat(channel.get("overshootPercent").toString())
                .isEqualTo(
                        "{\"rise\":{\"mean\":12.5,\"min\":12.0,\"max\":13.0,\"sd\":0.3,\"u\":0.1,\"u95\":0.2},\"fall\":"
                                + "{\"mean\":null,\"min\":null,\"max\":null,\"sd\":null,\"u\":null,\"u95\":null}}");
        assertThat(channel.get("dutyAtInputPercent").get("mean").asDouble()).isEqualTo(10.5);
    }

    @Test
    void singleNumbersHaveTheFieldsOfTheSchema() throws IOException {
        JsonNode channel = channel(0);
        assertThat(channel.get("edgeInstants").toString()).isEqualTo("{\"fitted\":5,\"interpolated\":2}");
        assertThat(channel.get("transitionS").toString())
                .isEqualTo("{\"rise\":{\"median\":1.2E-5,\"u\":1.0E-6,\"u95\":2.0E-6},"
                        + "\"fall\":{\"median\":null,\"u\":null,\"u95\":null}}");
        assertThat(channel.get("meanVoltage").toString()).isEqualTo("{\"value\":1.59,\"u\":0.002,\"u95\":0.004}");
        assertThat(channel.get("periodJitterS").toString())
                .isEqualTo("{\"rms\":2.0E-5,\"peakToPeak\":2.0E-4,\"rmsU\":1.0E-7,\"rmsU95\":2.0E-7,"
                        + "\"peakToPeakU\":1.0E-6,\"peakToPeakU95\":2.0E-6}");
    }

    @Test
    void eventsAreCountedAndListedAndMayBelongToNoCycle() throws IOException {
        JsonNode channel = channel(0);
        assertThat(channel.get("eventCounts").toString()).isEqualTo("{\"missing-pulse\":2500,\"runt\":1}");
        assertThat(channel.get("eventsListed").asInt()).isEqualTo(2);
        assertThat(channel.get("events").get(0).toString())
                .isEqualTo("{\"kind\":\"missing-pulse\",\"startS\":-0.05,\"endS\":-0.049,\"cycle\":1,"
                        + "\"detail\":\"no pulse for 10.0 ms\"}");
        assertThat(channel.get("events").get(1).get("cycle").isNull()).isTrue();
    }

    @Test
    void whatAStuckChannelHasNotIsNullAndHasAReason() throws IOException {
        JsonNode channel = channel(1);
        assertThat(channel.get("status").asText()).isEqualTo("stuck-low");
        assertThat(channel.get("statusReason").asText()).contains("no transition");
        assertThat(channel.get("activeLevel").asText()).isEqualTo("low");
        assertThat(channel.get("cycles").asLong()).isZero();
        assertThat(channel.get("frequencyHz").toString())
                .isEqualTo("{\"mean\":null,\"min\":null,\"max\":null,\"sd\":null,\"u\":null,\"u95\":null}");
        assertThat(channel.get("lowLevel").get("value").isNull()).isTrue();
        assertThat(channel.get("absent").toString()).isEqualTo("{\"frequency\":\"no whole cycle\"}");
    }

    @Test
    void aLevelChannelReportsMeanMinMaxAndRmsAndNoPulses() throws IOException {
        JsonNode channel = channel(2);
        assertThat(channel.get("role").asText()).isEqualTo("supply");
        assertThat(channel.get("level").toString())
                .isEqualTo("{\"mean\":{\"value\":13.8,\"u\":0.01,\"u95\":0.02},\"min\":13.3,\"max\":14.05,"
                        + "\"rms\":13.925}");
        assertThat(channel.get("cycles").isNull()).isTrue();
        assertThat(channel.get("activeLevel").isNull()).isTrue();
        assertThat(channel.get("eventCounts").toString()).isEqualTo("{}");
        assertThat(channel.get("events").toString()).isEqualTo("[]");
    }

    @Test
    void resultsOfOtherMeasurementsStandUnderTheirIds() throws IOException {
        JsonNode others = channel(0).get("measurements");
        assertThat(names(others)).containsExactly("overshoot", "settling");
        assertThat(others.get("overshoot").toString())
                .isEqualTo("{\"label\":\"overshoot\",\"unit\":\"%\",\"mean\":3.5,\"min\":3.0,\"max\":4.0,"
                        + "\"sd\":0.5,\"u\":0.25,\"u95\":0.5}");
        assertThat(others.get("settling").get("reason").asText()).isEqualTo("the signal never settles");
    }

    @Test
    void theSettingsCarryWhatWasSaidAndEveryDeclaredSetting() throws IOException {
        Map<String, ChannelPlan> plans = new LinkedHashMap<>();
        plans.put(
                "signal1",
                new ChannelPlan(
                        Optional.of(Role.PWM), Optional.of(ActiveLevel.LOW), Optional.empty(), OptionalDouble.empty()));
        RunSettings run = new RunSettings(
                "Dutywright 9.9.9",
                25,
                new ReadSettings(
                        OptionalDouble.of(1000),
                        List.of(new ReadSettings.Pick("#1", "signal1")),
                        Map.of("signal1", 10.0)),
                plans,
                OptionalDouble.of(-0.1),
                OptionalDouble.empty(),
                Optional.of("released"),
                OptionalDouble.of(13.5),
                List.of("yard"));
        JsonNode settings = MAPPER.readTree(text(Examples.measurement(), run)).get("settings");
        JsonNode measuring = settings.get("measuring");
        assertThat(measuring.get("reference.lower").toString())
                .isEqualTo("{\"value\":10.0,\"unit\":\"%\",\"changed\":false}");
        assertThat(measuring.size()).isEqualTo(PulseSettings.DECLARED.size());
        ((ObjectNode) settings).remove("measuring");
        // nothing was said there
        assertThat(((ObjectNode) settings).remove("import").get("delimiter").isNull())
                .isTrue();
        assertThat(settings.toString())
                .isEqualTo("{\"program\":\"Dutywright 9.9.9\",\"timeBasePpm\":25.0,\"sampleRateHz\":1000.0,"
                        + "\"columns\":[{\"column\":\"#1\",\"name\":\"signal1\"}],\"scales\":{\"signal1\":10.0},"
                        + "\"roles\":{\"signal1\":\"pwm\"},\"activeLevels\":{\"signal1\":\"low\"},\"fromS\":-0.1,"
                        + "\"toS\":null,\"position\":\"released\",\"supplyV\":13.5,\"catalogues\":[\"yard\"],"
                        + "\"voltageUncertaintyCovers\":\"reading only\"}");
    }

    @Test
    void aNumberThatIsNotFiniteIsAnInternalErrorAndNeverWritten() {
        Map<String, Result> results = new LinkedHashMap<>();
        Examples.cycles(results, "frequency", "Hz", new Statistic(Double.NaN, 1, 1, 0, 0, 0));
        ChannelMeasurement good = Examples.stuck();
        ChannelMeasurement bad = new ChannelMeasurement(
                good.channel(),
                good.role(),
                good.active(),
                good.status(),
                good.statusReason(),
                good.levels(),
                good.level(),
                good.medianPeriodSeconds(),
                0,
                0,
                results,
                good.eventCounts(),
                good.events(),
                good.cycles(),
                EdgeInstants.NONE);
        assertThatThrownBy(() -> text(Examples.measurement(List.of(bad)), Examples.RUN))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("mean is NaN");
    }

    @Test
    void theDocumentIsIndentedAndEndsWithALineFeed() throws IOException {
        String text = text(Examples.measurement(), Examples.RUN);
        assertThat(text).startsWith("{\n  \"schema\": \"").endsWith("}\n").doesNotContain("NaN", "\r");
        assertThat(text.lines())
                .contains("      \"lowLevel\": { \"value\": 0.4, \"u\": 0.001, \"u95\": 0.002 },")
                .contains("      \"events\": [],");
    }
}
