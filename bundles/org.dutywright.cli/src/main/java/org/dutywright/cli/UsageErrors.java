// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.util.List;
import java.util.stream.Collectors;
import org.dutywright.text.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Words what is wrong with a command line in one line. */
final class UsageErrors {
    private UsageErrors() {}

    /** The line, without the hint to the help text. */
    static String line(ParameterException error) {
        return switch (error) {
            case UnmatchedArgumentException unmatched -> unmatched(unmatched);
            case MissingParameterException missing -> missing(missing);
            default -> firstLine(error.getMessage());
        };
    }

    private static String unmatched(UnmatchedArgumentException error) {
        CommandLine command = error.getCommandLine();
        String first = error.getUnmatched().get(0);
        if (first.startsWith("-") && first.length() > 1) {
            String name = first.replaceFirst("=.*", "");
            List<String> known = command.getCommandSpec().options().stream()
                    .map(OptionSpec::longestName)
                    .toList();
            return "no option " + name + "; " + Nearest.hint(name, known);
        }
        if (!command.getSubcommands().isEmpty()) {
            return "no command " + first + "; "
                    + Nearest.hint(first, command.getSubcommands().keySet());
        }
        return "one word too many: " + first;
    }

    private static String missing(MissingParameterException error) {
        String names = error.getMissing().stream().map(UsageErrors::name).collect(Collectors.joining(", "));
        return error.getMissing().isEmpty() ? firstLine(error.getMessage()) : names + " is missing";
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option
                ? option.longestName() + " " + option.paramLabel()
                : argument.paramLabel();
    }

    private static String firstLine(String message) {
        return message == null
                ? "the command line cannot be read"
                : message.lines().findFirst().orElse(message);
    }
}
