// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.PrintStream;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.dutywright.capture.Progress;

/** One line on a terminal that says what is done and how far it is, written over itself a few times a second. */
final class ProgressLine implements Progress {
    private static final long INTERVAL_NANOS = TimeUnit.MILLISECONDS.toNanos(200);

    private final PrintStream terminal;
    private final LongSupplier nanoTime;
    private final Cancellation cancellation;
    private String task = "";
    private long total;
    private long done;
    private long shownAt;
    private int shownLength;

    /**
     * Makes it.
     *
     * @param terminal gets the line
     * @param nanoTime a clock as {@link System#nanoTime()}; nothing is shown in the first interval
     */
    ProgressLine(PrintStream terminal, LongSupplier nanoTime, Cancellation cancellation) {
        this.terminal = terminal;
        this.nanoTime = nanoTime;
        this.cancellation = cancellation;
        this.shownAt = nanoTime.getAsLong();
    }

    @Override
    public void begin(String newTask, long totalWork) {
        task = newTask;
        total = totalWork;
        done = 0;
        show();
    }

    @Override
    public void worked(long work) {
        done += work;
        show();
    }

    @Override
    public boolean isCancelled() {
        return cancellation.isAsked();
    }

    private void show() {
        long now = nanoTime.getAsLong();
        if (now - shownAt < INTERVAL_NANOS) {
            return;
        }
        shownAt = now;
        String percent = total > 0 ? String.format(Locale.ROOT, " %d %%", Math.min(100, 100 * done / total)) : "";
        String line = task + percent;
        terminal.print("\r" + line + " ".repeat(Math.max(0, shownLength - line.length())));
        terminal.flush();
        shownLength = line.length();
    }

    /** Takes the line away. */
    void clear() {
        if (shownLength > 0) {
            terminal.print("\r" + " ".repeat(shownLength) + "\r");
            terminal.flush();
            shownLength = 0;
        }
    }
}
