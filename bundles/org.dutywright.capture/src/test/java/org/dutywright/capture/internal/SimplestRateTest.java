// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.internal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SimplestRateTest {
    // closed form: the expected rate or its step is the only number of so few digits within the error
    @ParameterizedTest
    @CsvSource({
        "100000.00000000001, 1e-12, 100000",
        "99999.7, 1e-5, 100000",
        "333333.41, 1e-6, 333333.3333333333",
        "128.0000002, 1e-8, 128",
        "44100.02, 1e-6, 44100",
        "199.97, 1e-5, 199.97",
        "0.99999999, 1e-7, 1",
    })
    void theRateOrTheStepBecomesAShortNumber(double rateHz, double relativeHalfWidth, double expectedHz) {
        assertThat(SimplestRate.of(rateHz, relativeHalfWidth)).isEqualTo(expectedHz);
    }
}
