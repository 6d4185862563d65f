// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.dutywright.diagnosis.CheckResult;
import org.junit.jupiter.api.Test;

/** Field by field against the published schema dutywright.check/1; the numbers are those of {@link CheckExamples}. */
final class CheckJsonTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static JsonNode document(CheckResult check) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CheckJson.write(check, Examples.RUN, out);
        return MAPPER.readTree(out.toByteArray());
    }

    @Test
    void theHeadNamesSchemaSensorAndVerdict() throws IOException {
        JsonNode document = document(CheckExamples.failing());
        assertThat(document.get("schema").asText()).isEqualTo("dutywright.check/1");
        assertThat(document.get("sensor").asText()).isEqualTo("yard-pedal");
        assertThat(document.get("verdict").asText()).isEqualTo("does-not-conform");
        assertThat(document(CheckExamples.conforming()).get("verdict").asText()).isEqualTo("conforms");
        assertThat(document(CheckExamples.inconclusive()).get("verdict").asText())
                .isEqualTo("inconclusive");
    }

    @Test
    void eachLineHasTheFieldsOfTheSchemaAndNullForWhatIsAbsent() throws IOException {
        JsonNode lines = document(CheckExamples.failing()).get("lines");
        assertThat(lines.size()).isEqualTo(6);
        assertThat(lines.get(1).toString())
                .isEqualTo("{\"item\":\"signal1.frequency\",\"measured\":200.003,\"u\":0.012,\"unit\":\"Hz\","
                        + "\"lower\":180.0,\"upper\":220.0,\"conformityProbability\":1.0,\"result\":\"pass\","
                        + "\"reason\":\"\"}");
        assertThat(lines.get(3).toString())
                .isEqualTo("{\"item\":\"signal1.duty.released\",\"measured\":null,\"u\":null,\"unit\":\"%\","
                        + "\"lower\":8.0,\"upper\":12.0,\"conformityProbability\":null,\"result\":\"not-judged\","
                        + "\"reason\":\"it is not known whether the sensor was released; say so with --position\"}");
        assertThat(lines.get(2).get("result").asText()).isEqualTo("inconclusive");
        assertThat(lines.get(4).get("result").asText()).isEqualTo("fail");
    }

    @Test
    void theAgreementHasTheFieldsOfTheSchema() throws IOException {
        JsonNode agreement = document(CheckExamples.failing()).get("agreement");
        assertThat(agreement.get("maxDifferencePercent").asDouble()).isEqualTo(12.5);
        assertThat(agreement.get("limitPercent").asDouble()).isEqualTo(4);
        assertThat(agreement.get("longestBeyondLimitS").asDouble()).isEqualTo(0.25);
        assertThat(agreement.get("confirmationS").asDouble()).isEqualTo(0.2);
        assertThat(agreement.get("wouldFlag").asBoolean()).isTrue();
    }

    @Test
    void anAgreementThatCouldNotBeFoundIsNullAndHasAReason() throws IOException {
        JsonNode document = document(CheckExamples.conforming());
        assertThat(document.get("agreement").isNull()).isTrue();
        assertThat(document.get("agreementAbsent").asText()).isEqualTo("the sensor text has no agreement");
    }

    @Test
    void suspectsHaveTheFieldsOfTheSchema() throws IOException {
        JsonNode suspects = document(CheckExamples.failing()).get("suspects");
        assertThat(suspects.get(0).toString())
                .isEqualTo("{\"suspect\":\"signal-wire\",\"kind\":\"intermittent\",\"channels\":[\"signal1\"],"
                        + "\"weight\":0.75,\"for\":[\"The carrier kept its phase across 2500 missing pulses.\"],"
                        + "\"against\":[\"No level shift was found.\"]}");
        assertThat(suspects.get(1).get("kind").isNull()).isTrue();
        assertThat(document(CheckExamples.failing()).get("nextMeasurement").asText())
                .isEqualTo("Record the same wire at its other end.");
    }

    @Test
    void theWholeMeasurementIsInside() throws IOException {
        ByteArrayOutputStream measure = new ByteArrayOutputStream();
        MeasureJson.write(Examples.measurement(), Examples.RUN, measure);
        assertThat(document(CheckExamples.failing()).get("measure")).isEqualTo(MAPPER.readTree(measure.toByteArray()));
    }

    @Test
    void theSensorTextIsNamedWithItsOriginAndTheMatchIsSaid() throws IOException {
        JsonNode document = document(CheckExamples.failing());
        assertThat(document.get("sensorText").get("revision").asText()).isEqualTo("1");
        assertThat(document.get("sensorText").get("rule").asText()).isEqualTo("three-way");
        assertThat(document.get("matched").toString())
                .isEqualTo("{\"by\":\"order\",\"channels\":{\"signal1\":\"signal1\",\"signal2\":\"signal2\"}}");
        assertThat(document.get("absentLimits").get(0).asText()).isEqualTo("no limit for the low level of signal2");
    }
}
