// SPDX-License-Identifier: EPL-2.0
package org.dutywright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {
    // definitions of the SI prefixes; each result is the double nearest to the decimal number
    @ParameterizedTest
    @CsvSource({
        "9 V, 9, VOLT",
        "-0.5 mV, -0.0005, VOLT",
        "100 us, 0.0001, SECOND",
        "100 µs, 0.0001, SECOND",
        "100 \u03bcs, 0.0001, SECOND",
        "5ms, 0.005, SECOND",
        "0.18 kHz, 180, HERTZ",
        "1e3 millivolts, 1, VOLT",
        "2 %, 2, PERCENT",
        "50 %/s, 50, PERCENT_PER_SECOND",
        "4.35 KHz, 4350, HERTZ",
        "3.7 msec, 0.0037, SECOND",
        "8 micro seconds, 8e-6, SECOND",
        "1 MV, 1e6, VOLT",
        "1 mV, 1e-3, VOLT",
        "0.3 Volts, 0.3, VOLT",
        "-0 V, 0, VOLT",
        "4.7 kohm, 4700, OHM",
        "4.7 kΩ, 4700, OHM",
        "10 nF, 1e-8, FARAD",
        ".5 s, 0.5, SECOND"
    })
    void aNumberWithAUnitBecomesBaseUnits(String text, double value, Unit unit) throws UnitException {
        assertThat(Quantity.parse(text)).isEqualTo(new Quantity(value, unit));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "V", "12", "12 parsec", "1,5 V", "1e999 V", "NaN V", "0x10 V", "12 V V"})
    void whatIsNoQuantityIsRefusedWithAnExample(String text) {
        assertThatThrownBy(() -> Quantity.parse(text)).isInstanceOf(UnitException.class);
    }

    @Test
    void aWrongDimensionSaysWhatToWrite() {
        assertThatThrownBy(() -> Quantity.parse("5 ms", Dimension.FREQUENCY))
                .hasMessage("'5 ms' is a time, not a frequency; write for example 180 Hz");
        assertThatThrownBy(() -> Quantity.parse("fast", Dimension.FREQUENCY))
                .hasMessage("'fast' is not a number with a unit of frequency; write for example 180 Hz");
        assertThatThrownBy(() -> Quantity.parse("1,5 ms", Dimension.TIME))
                .hasMessage("'1,5 ms' is not a number with a unit of time; the decimal mark is a point;"
                        + " write for example 100 us");
        assertThatThrownBy(() -> Quantity.parse("9 volzt"))
                .hasMessage("'volzt' is not a known unit; write for example 9 V");
        assertThatThrownBy(() -> Quantity.parse("9")).hasMessage("'9' has no unit; write for example 9 V");
        assertThatThrownBy(() -> Quantity.parse("5", Dimension.TIME))
                .hasMessage("'5' has no unit of time; write for example 100 us");
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void theExampleOfEachDimensionIsOfThatDimension(Dimension dimension) throws UnitException {
        assertThat(Quantity.parse(dimension.example(), dimension).unit().dimension())
                .isEqualTo(dimension);
    }

    @Test
    void everyPrefixOfEveryUnitIsRead() {
        for (Unit unit : Unit.values()) {
            for (Prefix prefix : Prefix.values()) {
                if (unit.takesPrefix() || prefix == Prefix.NONE) {
                    assertThat(ScaledUnit.parse(prefix.symbol() + unit.symbol()))
                            .contains(new ScaledUnit(unit, prefix.factor()));
                    assertThat(ScaledUnit.parse(prefix.word() + unit.names().getLast()))
                            .as(prefix.word() + unit.names().getLast())
                            .contains(new ScaledUnit(unit, prefix.factor()));
                }
            }
        }
    }

    @Test
    void whatIsPrintedReadsBackToTheSameDigits() throws UnitException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(181);
        for (int i = 0; i < 10_000; i++) {
            double value = (random.nextBoolean() ? 1 : -1) * Math.pow(10, random.nextDouble(-11.9, 11.9));
            String printed = UnitPrinter.print(value, "V", 17);
            // 17 digits carry a double; scaling back by a power of ten may cost the last bit
            assertThat(Quantity.parse(printed).value()).as(printed).isCloseTo(value, within(value));
        }
    }

    private static org.assertj.core.data.Offset<Double> within(double value) {
        return org.assertj.core.api.Assertions.within(2 * Math.ulp(value));
    }
}
