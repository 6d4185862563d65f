// SPDX-License-Identifier: EPL-2.0
package org.dutywright.text;

/** Turns the text of a single value into what it means. */
@FunctionalInterface
public interface ScalarParser<T> {
    /**
     * Reads the value.
     *
     * @throws BadValueException if the text does not mean such a thing
     */
    T parse(String text) throws BadValueException;

    /** A text that is not empty. */
    static ScalarParser<String> text() {
        return text -> {
            if (text.isBlank()) {
                throw new BadValueException("a text is missing");
            }
            return text.strip();
        };
    }

    /** A text that is not empty and stands on one line, without control characters: for names and titles. */
    static ScalarParser<String> line() {
        return text -> {
            String line = text().parse(text);
            if (line.codePoints().anyMatch(Character::isISOControl)) {
                throw new BadValueException("'" + line + "' must stand on one line, without control characters");
            }
            return line;
        };
    }

    /** A plain finite number without unit. */
    static ScalarParser<Double> number() {
        return text -> {
            if (!text.strip().matches("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d{1,3})?")) {
                throw new BadValueException("'" + text.strip() + "' is not a plain number; write for example 2.5");
            }
            double value = Double.parseDouble(text.strip());
            if (!Double.isFinite(value)) {
                throw new BadValueException("'" + text.strip() + "' is too large");
            }
            return value;
        };
    }

    /** A whole number of at least {@code min} and at most {@code max}. */
    static ScalarParser<Long> whole(long min, long max) {
        return text -> {
            String digits = text.strip();
            if (digits.matches("[-+]?\\d{1,18}")) {
                long value = Long.parseLong(digits);
                if (value >= min && value <= max) {
                    return value;
                }
            }
            throw new BadValueException("'" + digits + "' is not a whole number from " + min + " to " + max);
        };
    }

    /** {@code true} or {@code false}. */
    static ScalarParser<Boolean> flag() {
        return text -> switch (text.strip()) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new BadValueException("'" + text.strip() + "' is neither true nor false");
        };
    }

    /** One of the words; a near miss is answered with the nearest. */
    static ScalarParser<String> word(java.util.List<String> words) {
        return text -> {
            if (words.contains(text.strip())) {
                return text.strip();
            }
            throw new BadValueException(
                    "'" + text.strip() + "' is not known here; " + Nearest.hint(text.strip(), words));
        };
    }
}
