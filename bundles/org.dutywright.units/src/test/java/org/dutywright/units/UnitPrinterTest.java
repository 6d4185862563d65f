// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitPrinterTest {
    @ParameterizedTest
    @CsvSource({
        "0.0049812, s, 3, 4.98 ms",
        "0.0009996, s, 3, 1.00 ms",
        "0.9996, s, 3, 1.00 s",
        "199.97, Hz, 5, 199.97 Hz",
        "999999, Hz, 3, 1.00 MHz",
        "12.3, V, 3, 12.3 V",
        "-0.00042, V, 2, -420 µV",
        "0, V, 3, 0 V",
        "-0.0, V, 3, 0 V",
        "0.000123, %, 2, 0.00012 %",
        "45.04, %, 4, 45.04 %",
        "1234567, %, 3, 1230000 %",
        "3e-14, s, 2, 0.030 ps",
        "5, '', 2, 5.0"
    })
    void aValueGetsThePrefixThatFitsItsRoundedSize(double value, String unit, int digits, String expected) {
        assertThat(UnitPrinter.print(value, unit, digits)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "200.00312, 0.0118, Hz, 200.003 ± 0.012 Hz",
        "0.0049812, 0.00000123, s, 4.9812 ± 0.0012 ms",
        "0.00099996, 0.0000012, s, 1.0000 ± 0.0012 ms",
        "12.3, 0.0996, V, 12.30 ± 0.10 V",
        "12345, 678, V, 12.34 ± 0.68 kV",
        "0.00001, 0.004, V, 0.0 ± 4.0 mV",
        "10.2, 0.07071, %, 10.200 ± 0.071 %",
        "-0.0001, 12, V, 0 ± 12 V",
        "98765, 4321, '', 98800 ± 4300"
    })
    void theUncertaintyDecidesHowManyDigitsAreShown(double value, double u, String unit, String expected) {
        assertThat(UnitPrinter.print(value, u, unit)).isEqualTo(expected);
    }

    @Test
    void anExactValueIsPrintedWithoutUncertainty() {
        assertThat(UnitPrinter.print(5, 0, "V")).isEqualTo("5.00000 V");
    }

    @Test
    void aNumberThatDoesNotExistIsNeverPrinted() {
        assertThatThrownBy(() -> UnitPrinter.print(Double.NaN, "V", 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> UnitPrinter.print(1, Double.NaN, "V")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> UnitPrinter.print(1, -1, "V")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void theMachinesLanguageDoesNotMatter() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(UnitPrinter.print(1.5, "V", 2)).isEqualTo("1.5 V");
        } finally {
            Locale.setDefault(before);
        }
    }
}
