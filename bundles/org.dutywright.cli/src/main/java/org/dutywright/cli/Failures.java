// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.CannotCreateException;
import org.dutywright.capture.UnreadableException;
import org.dutywright.text.Problem;
import org.dutywright.text.ProblemsException;

/** Turns what ends a command into an exit status and a line for the user. */
final class Failures {
    private Failures() {}

    /** Prints the line, or the problems of a text one a line, and tells the status. */
    static int report(Throwable thrown, String command, PrintStream err, ErrorLog log) {
        Throwable error = thrown instanceof UncheckedIOException unchecked ? unchecked.getCause() : thrown;
        return switch (error) {
            case CancelledException cancelled -> said(err, ExitStatus.CANCELLED, "cancelled; nothing is half-written");
            case CommandFailure failure -> said(err, failure.status(), withHint(failure.status(), failure, command));
            case UnreadableException unreadable
            when unreadable.settingsAtFault() ->
                said(err, ExitStatus.USAGE, withHint(ExitStatus.USAGE, unreadable, command));
            case UnreadableException unreadable -> said(err, ExitStatus.UNREADABLE, unreadable.getMessage());
            case CannotCreateException cannot -> said(err, ExitStatus.CANNOT_CREATE, cannot.getMessage());
            case ProblemsException problems -> {
                for (Problem problem : problems.problems()) {
                    err.println(problem);
                }
                yield ExitStatus.UNREADABLE;
            }
            case NoSuchFileException missing -> said(err, ExitStatus.NO_INPUT, Inputs.missing(missing.getFile()));
            case AccessDeniedException denied ->
                said(err, ExitStatus.NO_INPUT, denied.getFile() + ": no permission to read it; change its permissions");
            default -> internal(error, command, err, log);
        };
    }

    private static int said(PrintStream err, int status, String line) {
        err.println(oneLine(line));
        return status;
    }

    private static String withHint(int status, Exception failure, String command) {
        return status == ExitStatus.USAGE
                ? failure.getMessage() + " (" + command + " --help tells more)"
                : failure.getMessage();
    }

    private static int internal(Throwable error, String command, PrintStream err, ErrorLog log) {
        Optional<Path> file = log.add(command, error);
        String where = file.map(path -> "; details are in " + path).orElse("; no log could be written");
        String what = switch (error) {
            case OutOfMemoryError memory -> "not enough memory; give more with DUTYWRIGHT_JAVA_OPTS=-Xmx4g";
            case IOException trouble -> "reading or writing failed: " + nameAndMessage(trouble);
            default -> "internal error: " + nameAndMessage(error);
        };
        return said(err, ExitStatus.INTERNAL, what + where);
    }

    private static String nameAndMessage(Throwable error) {
        String name = error.getClass().getSimpleName();
        return error.getMessage() == null ? name : name + ": " + error.getMessage();
    }

    private static String oneLine(String text) {
        return text.strip().replaceAll("\\s*\\R\\s*", " ");
    }
}
