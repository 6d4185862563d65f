// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.util.OptionalDouble;
import org.dutywright.capture.Progress;

/**
 * What a session is doing, for those who show it. Passes everything on to the job's own progress and tells that
 * something changed at most once for each hundredth of a task.
 */
final class SessionProgress implements Progress {
    private static final int STEPS = 100;

    private final Progress job;
    private final Runnable changed;
    private long total;
    private long done;
    private int shown;
    private volatile Doing doing = new Doing("", OptionalDouble.empty());

    SessionProgress(Progress job, Runnable changed) {
        this.job = job;
        this.changed = changed;
    }

    /** The present task. */
    Doing doing() {
        return doing;
    }

    @Override
    public void begin(String task, long totalWork) {
        job.begin(task, totalWork);
        total = totalWork;
        done = 0;
        shown = 0;
        doing = new Doing(task, totalWork > 0 ? OptionalDouble.of(0) : OptionalDouble.empty());
        changed.run();
    }

    @Override
    public void worked(long work) {
        job.worked(work);
        done += work;
        int due = total <= 0 ? 0 : (int) Math.min(STEPS, (double) done / total * STEPS);
        if (due > shown) {
            shown = due;
            doing = new Doing(doing.task(), OptionalDouble.of((double) due / STEPS));
            changed.run();
        }
    }

    @Override
    public boolean isCancelled() {
        return job.isCancelled();
    }
}
