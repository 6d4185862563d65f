// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.csv;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dutywright.capture.StatedRate;
import org.dutywright.units.ScaledUnit;
import org.dutywright.units.Unit;

/** Sample rates and sample intervals that the lines before the table state in words. */
final class StatedRates {
    private static final String UNIT = "[\\p{L}µμ]+(?:/s)?";
    private static final String NUMBER = "(\\d+(?:[.,]\\d+)?(?:[eE][+-]?\\d+)?)";
    private static final String REST =
            "\\s*(?:[(\\[]\\s*(" + UNIT + ")\\s*[)\\]])?[\"\\s:=,;]+" + NUMBER + "[\"\\s,;]*(" + UNIT + ")?";
    private static final Pattern RATE = Pattern.compile(
            "\\b(?:sampl(?:e|ing)[ _-]?(?:rate|frequency)|samples per second|abtast(?:rate|frequenz))" + REST,
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    private static final Pattern INTERVAL = Pattern.compile(
            "\\b(?:sampl(?:e|ing)[ _-]?(?:interval|period)|time[ _-]?(?:step|increment)|abtastintervall)" + REST,
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    private static final Pattern SAMPLES_A_SECOND = Pattern.compile("([kKMG]?)(?:S|Sa|SPS|samples)(?:/s)?");
    private static final Pattern LINE_END = Pattern.compile("\r\n|\n|\r");
    /** Rates are set in round numbers: fewer digits than this in print are exact all the same. */
    private static final double MOST_TOLERANCE = 0.005;

    private StatedRates() {}

    /** Those of a file, in the order of their lines. */
    static List<StatedRate> find(HeadText head, Layout layout) {
        List<StatedRate> found = new ArrayList<>();
        String[] lines = LINE_END.split(head.text(), -1);
        for (int i = 0; i < layout.preambleLines() && i < lines.length; i++) {
            String origin = "line " + (i + 1);
            stated(RATE, lines[i], Unit.HERTZ, layout.decimalComma())
                    .ifPresent(it -> found.add(new StatedRate(origin, it.value(), it.tolerance())));
            stated(INTERVAL, lines[i], Unit.SECOND, layout.decimalComma())
                    .ifPresent(it -> found.add(new StatedRate(origin, 1 / it.value(), it.tolerance())));
        }
        return found;
    }

    private record Stated(double value, double tolerance) {}

    private static Optional<Stated> stated(Pattern pattern, String line, Unit unit, boolean decimalComma) {
        Matcher matcher = pattern.matcher(line);
        if (!matcher.find()) {
            return Optional.empty();
        }
        String number = matcher.group(2);
        if (number.contains(",") && !decimalComma) {
            number = number.substring(0, number.indexOf(','));
        }
        // what follows a number is a unit or the next word
        double factor = Optional.ofNullable(matcher.group(1))
                .flatMap(it -> factor(it, unit))
                .or(() -> Optional.ofNullable(matcher.group(3)).flatMap(it -> factor(it, unit)))
                .orElse(1.0);
        double value = Double.parseDouble(number.replace(',', '.')) * factor;
        return value > 0 && Double.isFinite(1 / value)
                ? Optional.of(new Stated(value, Math.min(MOST_TOLERANCE, tolerance(number))))
                : Optional.empty();
    }

    private static Optional<Double> factor(String written, Unit unit) {
        Matcher samples = SAMPLES_A_SECOND.matcher(written);
        String symbol = unit == Unit.HERTZ && samples.matches()
                ? samples.group(1).replace('K', 'k') + Unit.HERTZ.symbol()
                : written;
        return ScaledUnit.parse(symbol).filter(it -> it.unit() == unit).map(ScaledUnit::factor);
    }

    /** Half of the last digit, relative. */
    private static double tolerance(String number) {
        int exponent = Math.max(number.indexOf('e'), number.indexOf('E'));
        String mantissa = (exponent < 0 ? number : number.substring(0, exponent)).replace(',', '.');
        int decimals = mantissa.indexOf('.') < 0 ? 0 : mantissa.length() - mantissa.indexOf('.') - 1;
        return 0.5 * Math.pow(10, -decimals) / Double.parseDouble(mantissa);
    }
}
