// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
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
        "3600, s, 3, 3600 s",
        "59.9996, s, 5, 60.000 s",
        "999999, Hz, 3, 1.00 MHz",
        "12.3, V, 3, 12.3 V",
        "-0.00042, V, 2, -420 µV",
        "0, V, 3, 0 V",
        "-0.0, V, 3, 0 V",
        "0.000123, %, 2, 0.00012 %",
        "45.04, %, 4, 45.04 %",
        "1234567, %, 3, 1230000 %",
        "3e-14, s, 2, 0.030 ps",
        "4.3e-17, s, 3, 0 s",
        "-1e-12, %, 3, 0 %",
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
        "4800.0004, 0.0025, s, 4800.0004 ± 0.0025 s",
        "-0.00004, 0.0012, V, 0.0 ± 1.2 mV",
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
    void whatRoundingLeftOverIsNoUncertainty() {
        assertThat(UnitPrinter.print(4.3e-17, 2e-18, "s")).isEqualTo("0 s");
        assertThat(UnitPrinter.print(23.9, 1e-12, "%")).isEqualTo("23.9000 %");
    }

    @Test
    void anExactValueIsPrintedWithoutUncertainty() {
        assertThat(UnitPrinter.print(5, 0, "V")).isEqualTo("5.00000 V");
    }

    // value and uncertainty read back to within half a unit of the last digit that is shown: the definition of rounding
    @Test
    void aPrintedValueLiesWithinHalfItsLastDigitAndHasNoMinusZero() throws UnitException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(2026);
        for (int i = 0; i < 10_000; i++) {
            double u = Math.pow(10, random.nextDouble(-9, 3));
            double value = random.nextGaussian() * Math.pow(10, random.nextDouble(-9, 5));
            String printed = UnitPrinter.print(value, u, "V");
            String unit = printed.substring(printed.lastIndexOf(' '));
            String[] numbers = printed.substring(0, printed.lastIndexOf(' ')).split(" ± ", -1);
            double lastDigit = Quantity.parse("1" + unit).value() * Math.pow(10, -new BigDecimal(numbers[0]).scale());
            // where digits before the point are rounded away the step follows from u alone
            double step = Math.max(lastDigit, Math.pow(10, Math.floor(Math.log10(u * 1.005)) - 1));
            // 1e-9: relative error of the arithmetic of this test
            assertThat(Quantity.parse(numbers[0] + unit).value())
                    .as(printed)
                    .isCloseTo(value, within(step / 2 * (1 + 1e-9) + Math.abs(value) * 1e-15));
            assertThat(Quantity.parse(numbers[1] + unit).value())
                    .as(printed)
                    .isCloseTo(u, within(step / 2 * (1 + 1e-9)));
            assertThat(printed).doesNotMatch("-0(\\.0*)? .*");
        }
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
