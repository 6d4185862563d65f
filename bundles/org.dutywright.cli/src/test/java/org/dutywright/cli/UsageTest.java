// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Wrong usage is status 64 and one line that hints at --help; help and version are results. */
final class UsageTest {
    @Test
    void theVersionIsNameAndNumber() {
        Run run = Run.of("--version");
        assertThat(run.status()).isZero();
        assertThat(run.out()).matches("Dutywright \\d+\\.\\d+\\.\\d+\\R");
        assertThat(run.err()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void eachCommandHelps(String[] words) {
        Run run = Run.of((Object[]) words);
        assertThat(run.status()).isZero();
        assertThat(run.out()).startsWith("Usage: dutywright").contains("--help").contains("--version");
        assertThat(run.err()).isEmpty();
    }

    static Stream<Arguments> commands() {
        return Stream.of(
                        "--help",
                        "measure --help",
                        "check --help",
                        "simulate --help",
                        "catalogue --help",
                        "catalogue list --help",
                        "catalogue show --help",
                        "catalogue validate --help",
                        "plugins --help",
                        "settings --help",
                        "demo --help")
                .map(line -> Arguments.of((Object) line.split(" ", -1)));
    }

    @ParameterizedTest
    @MethodSource("wrongLines")
    void wrongUsageIsOneLineThatSaysWhatIsWrong(String line, String part) {
        Run run = Run.of((Object[]) (line.isEmpty() ? new String[0] : line.split(" ", -1)));
        assertThat(run.status()).isEqualTo(64);
        assertThat(run.out()).isEmpty();
        assertThat(run.errors()).hasSize(1);
        assertThat(run.err()).contains(part).contains("--help");
    }

    static Stream<Arguments> wrongLines() {
        return Stream.of(
                Arguments.of("", "no command"),
                Arguments.of("mesure x.csv", "did you mean 'measure'?"),
                Arguments.of("measure", "FILE is missing"),
                Arguments.of("measure x.csv --jsn y", "did you mean '--json'?"),
                Arguments.of("measure x.csv --json a --json b", "--json"),
                Arguments.of("measure x.csv --sample-rate fast", "'fast' is no number"),
                Arguments.of("measure x.csv --sample-rate NaN", "'NaN' is no number"),
                Arguments.of("measure x.csv --sample-rate 0", "must be above 0"),
                Arguments.of("measure x.csv --time-base-ppm -1", "must lie between 0"),
                Arguments.of("measure x.csv --from 2 --to 1", "must lie after --from"),
                Arguments.of("measure x.csv --role signal1", "write it as NAME=ROLE"),
                Arguments.of("measure x.csv --role signal1=pump", "pwm, supply, ground, level, switch, ignore"),
                Arguments.of("measure x.csv --role a=pwm --role a=level", "given twice"),
                Arguments.of("measure x.csv --active signal1=up", "high, low"),
                Arguments.of("measure x.csv --scale signal1=0", "nothing to measure"),
                Arguments.of("measure x.csv --scale signal1=x", "'x' is no number"),
                Arguments.of("measure x.csv --setting reference.lowest=5", "did you mean 'reference.lower'?"),
                Arguments.of("measure x.csv --setting zzzzzzzz=5", "'dutywright settings' lists them all"),
                Arguments.of("measure x.csv --setting reference.lower=5000", "between 1 % and 49 %"),
                Arguments.of("measure x.csv --setting stuck.alone=5%", "not a voltage"),
                Arguments.of("measure x.csv --setting instrument.time-base=5 --time-base-ppm 5", "give one of them"),
                Arguments.of("measure x.csv --report r.html", "no option --report"),
                Arguments.of("check x.csv", "--sensor ID is missing"),
                Arguments.of("check x.csv --sensor twin-pedal-200 --position halfway", "released or pressed"),
                Arguments.of("check x.csv --sensor twin-pedal-200 --supply 0", "must be above 0"),
                Arguments.of("catalogue", "list, show ID or validate"),
                Arguments.of("catalogue show twin-pedal-20", "did you mean 'twin-pedal-200'?"),
                Arguments.of("simulate x.yaml", "--to FILE.csv is missing"),
                Arguments.of("screen x", "no command screen"),
                Arguments.of("plugins now", "one word too many: now"));
    }
}
