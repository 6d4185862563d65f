// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The oracle is {@link Double#parseDouble}; equal means equal to the last bit. */
class DecimalScanTest {
    private static final int TRIALS = 1_000_000;
    private static final int SLACK = 16;

    private final DecimalScan scan = new DecimalScan(false);

    private int end(String text) {
        byte[] bytes = new byte[3 + text.length() + SLACK];
        byte[] number = text.getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(number, 0, bytes, 3, number.length);
        return scan.scan(bytes, 3);
    }

    private void assertReads(String text) {
        assertThat(end(text)).as(text).isEqualTo(3 + text.length());
        assertThat(Double.doubleToRawLongBits(scan.value()))
                .as(text)
                .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(text)));
    }

    @Test
    void random_decimals_are_the_nearest_double() {
        Random random = new Random(20261125);
        for (int i = 0; i < TRIALS; i++) {
            assertReads(decimal(random));
        }
    }

    private static String decimal(Random random) {
        StringBuilder text = new StringBuilder(random.nextInt(3) == 0 ? "-" : random.nextInt(9) == 0 ? "+" : "");
        int before = random.nextInt(random.nextInt(10) == 0 ? 25 : 8);
        int behind = random.nextInt(random.nextInt(10) == 0 ? 25 : 12);
        int zeros = random.nextInt(4) == 0 ? random.nextInt(12) : 0;
        digits(text, before, random);
        if (behind > 0 || before == 0 || random.nextInt(20) == 0) {
            text.append('.');
            text.repeat('0', zeros);
            digits(text, before == 0 ? Math.max(1, behind) : behind, random);
        }
        if (random.nextInt(4) == 0) {
            text.append(random.nextBoolean() ? 'e' : 'E');
            text.append(random.nextInt(3) == 0 ? "-" : random.nextInt(3) == 0 ? "+" : "");
            text.append(random.nextInt(random.nextInt(3) == 0 ? 36 : 6));
        }
        // beyond 9.9e37 an instrument means that there is no number
        return Math.abs(Double.parseDouble(text.toString())) < 9e37
                ? text.toString()
                : "0" + text.charAt(text.length() - 1);
    }

    private static void digits(StringBuilder text, int count, Random random) {
        for (int i = 0; i < count; i++) {
            text.append((char) ('0' + random.nextInt(10)));
        }
    }

    @Test
    void printed_doubles_come_back() {
        Random random = new Random(53);
        for (int i = 0; i < TRIALS / 10; i++) {
            double value = random.nextGaussian() * Math.pow(10, random.nextInt(60) - 30);
            assertReads(Double.toString(value));
            assertReads(String.format(Locale.ROOT, "%.6e", value));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "-0",
                "0.0",
                "-0.0",
                "1.",
                ".5",
                "-.5",
                "+3",
                "9007199254740992",
                "9007199254740993",
                "9007199254740993.0",
                "0.1",
                "0.30000000000000004",
                "123456789012345678",
                "1234567890123456789",
                "1e22",
                "1e23",
                "1e-22",
                "1e-23",
                "2.5E+3",
                "00000000000000000001.5",
                "0.00000000000000000001",
                "4.9e-324",
                "2.2250738585072011e-308",
                "1e0000",
                "8.88888888",
                "8.888888888",
                "12345678.12345678"
            })
    void edges_of_the_fast_way_are_read_exactly(String text) {
        assertReads(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", ".", "-.", "e5", "1e", "1e+", "nan", "9.9e37", "-9.91E37", "1e400", "1e00005"})
    void other_things_are_left_to_others(String text) {
        assertThat(end(text)).isEqualTo(DecimalScan.NO_NUMBER);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1,5", "1;", "1 ", "1\t2", "1\r", "1\n", "1:", "1/", "1\u007f", "1x"})
    void a_number_ends_where_its_digits_end(String text) {
        assertThat(end(text)).isEqualTo(4);
        assertThat(end("0." + text)).isEqualTo(6);
    }

    @Test
    void a_comma_is_the_mark_where_it_is_said_to_be() {
        DecimalScan comma = new DecimalScan(true);
        byte[] bytes = "2,75;1.5".getBytes(StandardCharsets.US_ASCII);
        bytes = java.util.Arrays.copyOf(bytes, bytes.length + SLACK);
        assertThat(comma.scan(bytes, 0)).isEqualTo(4);
        assertThat(comma.value()).isEqualTo(2.75);
        assertThat(comma.scan(bytes, 5)).isEqualTo(6);
    }
}
