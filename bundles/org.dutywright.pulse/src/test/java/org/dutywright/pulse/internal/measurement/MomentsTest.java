// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.measurement;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The NIST StRD univariate sets. Certified values and the digits that a two-pass computation in doubles reaches are those
 * of ../shared/data (facts of the sets); NumAcc1 to 4 are generated from their published definition as well.
 */
class MomentsTest {
    private static Moments of(double... values) {
        Moments moments = new Moments();
        for (double value : values) {
            moments.add(value);
        }
        return moments;
    }

    /** Number of digits in which a value agrees with the certified one. */
    private static double digits(double value, double certified) {
        double error = Math.abs(value - certified) / Math.abs(certified);
        return error == 0 ? 16 : -Math.log10(error);
    }

    private static void assertDigits(
            Moments moments, double mean, double sd, double lag1, double forSd, double forLag) {
        assertThat(digits(moments.mean(), mean)).isGreaterThan(15);
        assertThat(digits(moments.sd(), sd)).isGreaterThan(forSd);
        assertThat(digits(moments.autocorrelation(), lag1)).isGreaterThan(forLag);
    }

    /** NumAcc2 to 4: centre, then 1,000 values alternately 0.1 below and above it, as decimal text. */
    private static double[] alternating(String centre, String below, String above) {
        double[] values = new double[1001];
        values[0] = Double.parseDouble(centre);
        for (int i = 1; i < values.length; i++) {
            values[i] = Double.parseDouble(i % 2 == 1 ? below : above);
        }
        return values;
    }

    @Test
    void keeps_all_digits_of_the_generated_sets() {
        assertDigits(of(10000001, 10000003, 10000002), 10000002, 1, -0.5, 15, 15);
        assertDigits(of(alternating("1.2", "1.1", "1.3")), 1.2, 0.1, -0.999, 15, 15);
        // the rounding of the decimals to doubles limits these two, in any algorithm: a computation with two passes
        // over
        // the doubles reaches no more
        assertDigits(of(alternating("1000000.2", "1000000.1", "1000000.3")), 1000000.2, 0.1, -0.999, 9.4, 12.2);
        assertDigits(of(alternating("10000000.2", "10000000.1", "10000000.3")), 10000000.2, 0.1, -0.999, 8.2, 11);
    }

    @ParameterizedTest
    @CsvSource({
        "Lew, -177.435, 277.332168044316, -0.307304800605679, 15, 14.7",
        "Lottery, 518.958715596330, 291.699727470969, -0.120948622967393, 15, 14.9",
        "Mavro, 2.001856, 0.000429123454003053, 0.937989183438248, 13.1, 13.9",
        "Michelso, 299.8524, 0.0790105478190518, 0.535199668621283, 13.8, 13.4",
        "NumAcc1, 10000002, 1, -0.5, 15, 15",
        "NumAcc2, 1.2, 0.1, -0.999, 15, 15",
        "NumAcc3, 1000000.2, 0.1, -0.999, 9.4, 12.2",
        "NumAcc4, 10000000.2, 0.1, -0.999, 8.2, 11",
        "PiDigits, 4.5348, 2.86733906028871, -0.00355099287237972, 15, 15"
    })
    void keeps_the_digits_of_the_nist_sets(
            String name, double mean, double sd, double lag1, double forSd, double forLag) throws IOException {
        Path file = sharedData().resolve("nist").resolve(name + ".txt");
        Assumptions.assumeTrue(Files.exists(file), "NIST set " + name + " is not beside the project: skipped");
        assertDigits(of(data(file)), mean, sd, lag1, forSd, forLag);
    }

    private static Path sharedData() {
        String given = System.getProperty("DUTYWRIGHT_SHARED_DATA", System.getenv("DUTYWRIGHT_SHARED_DATA"));
        if (given != null) {
            return Path.of(given);
        }
        Path folder = Path.of("").toAbsolutePath();
        while (folder != null && !(Files.exists(folder.resolve("pom.xml")) && Files.exists(folder.resolve("releng")))) {
            folder = folder.getParent();
        }
        return folder == null
                ? Path.of("shared", "data")
                : folder.resolveSibling("shared").resolve("data");
    }

    private static double[] data(Path file) throws IOException {
        List<Double> values = new ArrayList<>();
        boolean inData = false;
        for (String line : Files.readAllLines(file)) {
            if (line.startsWith("#")) {
                inData = true;
            } else if (line.matches("-{5,}\\s*")) {
                inData = true;
                values.clear();
            } else if (inData && line.strip().matches("[-+0-9.eE]+")) {
                values.add(Double.parseDouble(line.strip()));
            }
        }
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    @Test
    void one_value_scatters_by_nothing_and_none_has_no_mean_extremes() {
        assertThat(of(5).sd()).isZero();
        assertThat(of(5).mean()).isEqualTo(5);
        assertThat(of().min()).isNaN();
    }

    @Test
    void an_interruption_makes_no_pair() {
        Moments moments = of(1, 2, 3);
        moments.interrupt();
        moments.add(7);
        moments.add(8);
        assertThat(moments.pairs()).isEqualTo(3);
    }
}
