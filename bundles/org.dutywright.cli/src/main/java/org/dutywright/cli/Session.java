// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.CannotCreateException;
import org.dutywright.capture.Progress;

/** What a command talks through: results to one stream, messages and progress to the other. */
final class Session {
    private final PrintStream out;
    private final PrintStream err;
    private final Cancellation cancellation;
    private final boolean terminal;
    private Optional<ProgressLine> line = Optional.empty();
    private boolean quiet;

    Session(PrintStream out, PrintStream err, Cancellation cancellation, boolean terminal) {
        this.out = out;
        this.err = err;
        this.cancellation = cancellation;
        this.terminal = terminal;
    }

    /** Leaves out messages and progress; results and errors stay. */
    void beQuiet(boolean wanted) {
        quiet = wanted;
    }

    /**
     * Prints lines of a result.
     *
     * @throws CannotCreateException if they get lost
     */
    void print(List<String> lines) throws CannotCreateException {
        checkCancelled();
        endProgress();
        lines.forEach(out::println);
        checkWritten();
    }

    /**
     * Prints a result that is a document of its own.
     *
     * @throws CannotCreateException if it gets lost
     */
    void print(byte[] document) throws CannotCreateException {
        checkCancelled();
        endProgress();
        out.write(document, 0, document.length);
        checkWritten();
    }

    private void checkWritten() throws CannotCreateException {
        if (out.checkError()) {
            throw new CannotCreateException(
                    Path.of("standard output"), "its reader has closed it, or the disk is full");
        }
    }

    /** Tells the user something beside the result. */
    void message(String text) {
        if (!quiet) {
            endProgress();
            err.println(text);
        }
    }

    /** What long work reports to: a line on a terminal, else only the wish to stop. */
    Progress progress() {
        if (!terminal || quiet) {
            return silent();
        }
        if (line.isEmpty()) {
            line = Optional.of(new ProgressLine(err, System::nanoTime, cancellation));
        }
        return line.get();
    }

    /** Takes the progress line away, so that other output starts on a clean line. */
    void endProgress() {
        line.ifPresent(ProgressLine::clear);
        line = Optional.empty();
    }

    /**
     * To be called before results are printed.
     *
     * @throws CancelledException if the user asked to stop
     */
    void checkCancelled() {
        if (cancellation.isAsked()) {
            throw new CancelledException();
        }
    }

    private Progress silent() {
        return new Progress() {
            @Override
            public void begin(String task, long totalWork) {}

            @Override
            public void worked(long work) {}

            @Override
            public boolean isCancelled() {
                return cancellation.isAsked();
            }
        };
    }
}
