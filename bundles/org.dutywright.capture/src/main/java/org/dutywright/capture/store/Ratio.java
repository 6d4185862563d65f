// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.store;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A ratio of whole numbers, in lowest terms, the lower one above 0. */
record Ratio(BigInteger over, BigInteger under) {
    // Doubles span 1e-324 to 1.8e308: more digits are never needed.
    private static final Pattern TEXT = Pattern.compile("(-?\\d{1,350})(?:/(\\d{1,350}))?");
    private static final MathContext MORE_THAN_A_DOUBLE = new MathContext(40);

    /** The shortest decimal that reads as a number, as a ratio. */
    static Ratio of(double value) {
        BigDecimal decimal = new BigDecimal(Double.toString(value));
        BigInteger over = decimal.unscaledValue();
        BigInteger under = BigInteger.TEN.pow(Math.max(0, decimal.scale()));
        if (decimal.scale() < 0) {
            over = over.multiply(BigInteger.TEN.pow(-decimal.scale()));
        }
        return reduced(over, under);
    }

    /** The step of a sample rate; {@link #reciprocal} gives back exactly this rate. Of two such, the shorter one. */
    static Ratio stepOf(double rateHz) {
        Ratio rate = of(rateHz);
        Ratio exact = reduced(rate.under(), rate.over());
        Ratio step = of(1 / rateHz);
        boolean same = step.reciprocal() == rateHz;
        return same && step.text().length() < exact.text().length() ? step : exact;
    }

    /** Reads what {@link #text} writes; empty if it is anything else. */
    static Optional<Ratio> parse(String text) {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        BigInteger under = matcher.group(2) == null ? BigInteger.ONE : new BigInteger(matcher.group(2));
        return under.signum() == 0 ? Optional.empty() : Optional.of(reduced(new BigInteger(matcher.group(1)), under));
    }

    private static Ratio reduced(BigInteger dividend, BigInteger divisor) {
        BigInteger common = dividend.gcd(divisor);
        return new Ratio(dividend.divide(common), divisor.divide(common));
    }

    String text() {
        return under.equals(BigInteger.ONE) ? over.toString() : over + "/" + under;
    }

    /** The nearest double. */
    double value() {
        return quotient(over, under);
    }

    /** The nearest double to 1 divided by it; infinite if it is 0. */
    double reciprocal() {
        return over.signum() == 0 ? Double.POSITIVE_INFINITY : quotient(under, over);
    }

    private static double quotient(BigInteger dividend, BigInteger divisor) {
        return new BigDecimal(dividend)
                .divide(new BigDecimal(divisor), MORE_THAN_A_DOUBLE)
                .doubleValue();
    }
}
