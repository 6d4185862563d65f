// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.dutywright.pulse.Budget;
import org.dutywright.pulse.Budget.Component;
import org.dutywright.pulse.Uncertain;
import org.junit.jupiter.api.Test;

/** How budgets stand beside the numbers that they explain. */
final class BudgetInFilesTest {
    private static String json(Uncertain value) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (JsonWriter json = JsonWriter.to(out)) {
            json.object(() -> json.uncertain("mean", Optional.of(value)));
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void anUncertaintyIsFollowedByWhatItIsMadeOf() throws IOException {
        Budget budget = Budget.of(Component.typeA("noise", 0.003, 9), Component.normal("code step", 0.004));
        // 3, 4, 5 make a right triangle
        assertThat(budget.around(1.5).u()).isEqualTo(0.005);
        assertThat(json(new Uncertain(1.5, 0.005, 0.01, budget)))
                .contains(
                        "\"u95\": 0.01, \"budget\": [ { \"name\": \"noise\", \"type\": \"A\", \"distribution\": \"t\","
                                + " \"u\": 0.003, \"degreesOfFreedom\": 9.0 }, { \"name\": \"code step\", \"type\": \"B\","
                                + " \"distribution\": \"normal\", \"u\": 0.004, \"degreesOfFreedom\": null } ] }\n}");
    }

    @Test
    void numbersWithoutABudgetStandAlone() throws IOException {
        assertThat(json(new Uncertain(1.5, 0.005, 0.01))).doesNotContain("budget");
        assertThat(Show.mostly(Budget.NONE)).isEmpty();
    }

    @Test
    void textsNameTheLargestPart() {
        Budget budget = Budget.of(Component.normal("noise", 1), Component.rectangular("the clock", 3));
        assertThat(Show.mostly(budget)).isEqualTo("u mostly from the clock");
    }
}
