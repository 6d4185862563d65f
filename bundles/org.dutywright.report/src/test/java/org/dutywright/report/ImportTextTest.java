// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.dutywright.capture.Delimiter;
import org.dutywright.capture.ImportSettings;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.TableSettings;
import org.dutywright.capture.TimeSettings;
import org.dutywright.text.Problem;
import org.dutywright.text.ProblemsException;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.Unit;
import org.junit.jupiter.api.Test;

final class ImportTextTest {
    private static final List<String> ROLES = List.of("pwm", "level");

    private static final ImportSettings ALL = new ImportSettings(
            "Bench \"recorder\", export",
            new ReadSettings(
                    Optional.of("csv"),
                    OptionalDouble.of(50_000.5),
                    List.of(new ReadSettings.Pick("pedal: \\ (mV)", "signal1"), new ReadSettings.Pick("#2", "no")),
                    Map.of("signal1", 11.25),
                    Map.of("signal1", new ScaledUnit(Unit.VOLT, 1e-3)),
                    OptionalDouble.of(5),
                    new TimeSettings(Optional.of("t (µs)"), Optional.of(new ScaledUnit(Unit.SECOND, 1e-6))),
                    new TableSettings(
                            Optional.of(StandardCharsets.ISO_8859_1),
                            Optional.of(Delimiter.PIPE),
                            Optional.of(true),
                            OptionalLong.of(3),
                            OptionalLong.of(0),
                            OptionalLong.of(5))),
            Map.of("signal1", "pwm"));

    @Test
    void whatIsWrittenIsReadBackTheSame() throws Exception {
        assertThat(ImportText.parse("a.yaml", ImportText.write(ALL), ROLES)).isEqualTo(ALL);
        ImportSettings named = new ImportSettings("x", ReadSettings.none(), Map.of());
        assertThat(ImportText.parse("a.yaml", ImportText.write(named), ROLES)).isEqualTo(named);
    }

    @Test
    void allProblemsAreToldAtOnceWithTheirPlaces() {
        assertThat(problems("""
                        schema: dutywright.import/1
                        samplerate: 5 ms
                        table:
                          delimiter: semicolons
                          headerLine: 0
                          decimalMark: ','
                        time: {column: t, unit: mV}
                        channels:
                          - {column: a, name: one, role: pmw, scale: 0}
                          - {column: b, name: one}
                        """))
                .containsExactly(
                        "a.yaml:1:1: a text of import settings needs the key 'name'; write for example name: Bench"
                                + " recorder, text export",
                        "a.yaml:2:1: unknown key 'samplerate' in a text of import settings; did you mean"
                                + " 'sampleRate'?",
                        "a.yaml:4:14: 'delimiter': 'semicolons' is no delimiter; did you mean 'semicolon'?",
                        "a.yaml:5:15: 'headerLine': '0' is not a whole number from 1 to 100000",
                        "a.yaml:6:16: 'decimalMark': ',' is not known here; known are point, comma",
                        "a.yaml:7:25: 'unit': 'mV' is no unit of time; write for example ms",
                        "a.yaml:9:34: 'role': 'pmw' is not known here; did you mean 'pwm'?",
                        "a.yaml:9:46: 'scale': a factor of 0 leaves nothing to measure",
                        "a.yaml:10:17: the channel 'one' stands here a second time; the first is in line 9");
    }

    @Test
    void aWrongDimensionIsRefusedWithWhatToWrite() {
        assertThat(problems("schema: dutywright.import/1\nname: x\nsampleRate: 5 ms\n"))
                .containsExactly(
                        "a.yaml:3:13: 'sampleRate': '5 ms' is a time, not a frequency; write for example 180 Hz");
    }

    @Test
    void anotherTextIsNamedAsOne() {
        assertThat(problems("schema: dutywright.sensor/1\nid: x\n"))
                .containsExactly("a.yaml:1:9: 'schema': 'dutywright.sensor/1' is not a schema that this version reads;"
                        + " write dutywright.import/1");
    }

    @Test
    void whatIsSaidOnTopWinsAndGoesWithARenamedColumn() {
        ReadSettings onTop = new ReadSettings(
                OptionalDouble.of(1000), List.of(new ReadSettings.Pick("signal1", "pedal")), Map.of("pedal", 2.0));
        ImportSettings merged = ALL.with(onTop);

        assertThat(merged.read().sampleRateHz()).hasValue(1000);
        assertThat(merged.read().channels()).isEqualTo(onTop.channels());
        assertThat(merged.read().scales()).isEqualTo(Map.of("pedal", 2.0));
        assertThat(merged.read().units()).isEqualTo(Map.of("pedal", new ScaledUnit(Unit.VOLT, 1e-3)));
        assertThat(merged.roles()).isEqualTo(Map.of("pedal", "pwm"));
        assertThat(merged.read().table()).isEqualTo(ALL.read().table());
    }

    private static List<String> problems(String text) {
        ProblemsException thrown =
                catchThrowableOfType(ProblemsException.class, () -> ImportText.parse("a.yaml", text, ROLES));
        return thrown.problems().stream().map(Problem::toString).toList();
    }
}
