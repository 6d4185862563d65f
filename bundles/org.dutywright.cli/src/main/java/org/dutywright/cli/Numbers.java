// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.util.regex.Pattern;
import picocli.CommandLine;

/** Reads numbers of the command line: decimal, finite, with a point. */
final class Numbers implements CommandLine.ITypeConverter<Double> {
    private static final Pattern DECIMAL = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

    @Override
    public Double convert(String text) {
        return parse(text);
    }

    /**
     * Reads one of a {@code NAME=VALUE}.
     *
     * @throws CommandFailure if it is none
     */
    static double parse(String option, Assignment assignment) {
        try {
            return parse(assignment.value());
        } catch (CommandLine.TypeConversionException e) {
            throw CommandFailure.usage(option + " " + assignment.name() + ": " + e.getMessage());
        }
    }

    /**
     * Reads one.
     *
     * @throws CommandLine.TypeConversionException if it is none
     */
    static double parse(String text) {
        if (DECIMAL.matcher(text).matches()) {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        }
        throw new CommandLine.TypeConversionException("'" + text + "' is no number; write it like 12.5 or 1e-3");
    }
}
