// SPDX-License-Identifier: EPL-2.0
package org.dutywright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VerdictTest {
    private static final LineResult[] RESULTS = LineResult.values();

    // Every set of line results (16) with no agreement, one that flags nothing, and one that flags.
    @ParameterizedTest
    @ValueSource(strings = {"none", "quiet", "flag"})
    void everyCombinationFollowsTheRuleOfTheInterface(String agreement) {
        for (int set = 0; set < 16; set++) {
            List<Line> lines = new ArrayList<>();
            for (int bit = 0; bit < RESULTS.length; bit++) {
                if ((set & (1 << bit)) != 0) {
                    lines.add(line(RESULTS[bit]));
                }
            }
            assertThat(Verdict.of(lines, agreement(agreement)))
                    .as(
                            "lines %s, agreement %s",
                            lines.stream().map(Line::result).toList(), agreement)
                    .isEqualTo(expected(lines, agreement));
        }
    }

    // The words of the interface, read one after the other; deliberately not written like the code under test.
    private static Verdict expected(List<Line> lines, String agreement) {
        boolean fails = false;
        boolean inconclusive = false;
        int judged = agreement.equals("none") ? 0 : 1;
        for (Line line : lines) {
            switch (line.result()) {
                case FAIL -> fails = true;
                case INCONCLUSIVE -> inconclusive = true;
                case PASS -> judged++;
                case NOT_JUDGED -> {}
            }
        }
        if (fails || agreement.equals("flag")) {
            return Verdict.DOES_NOT_CONFORM;
        }
        return inconclusive || judged == 0 ? Verdict.INCONCLUSIVE : Verdict.CONFORMS;
    }

    private static Optional<AgreementResult> agreement(String kind) {
        if (kind.equals("none")) {
            return Optional.empty();
        }
        boolean flag = kind.equals("flag");
        return Optional.of(new AgreementResult(
                5, 1, 4, 8, flag ? 0.3 : 0.1, OptionalDouble.of(1), 0.2, flag, 100, List.of("signal1", "signal2")));
    }

    private static Line line(LineResult result) {
        OptionalDouble none = OptionalDouble.empty();
        return new Line("signal1.signal", none, none, "", none, none, none, result, "");
    }
}
