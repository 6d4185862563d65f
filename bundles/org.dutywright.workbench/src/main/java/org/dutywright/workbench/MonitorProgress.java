// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench;

import org.dutywright.capture.Progress;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.SubMonitor;

/**
 * Shows the progress of long work in a progress monitor and asks it whether the user wants to stop. The core counts
 * work in samples or bytes, which can be more than a monitor counts, so the work of a task is scaled to a thousand steps.
 */
public final class MonitorProgress implements Progress {
    private static final int STEPS = 1000;

    private final SubMonitor whole;
    private SubMonitor task;
    private long totalWork;
    private long done;
    private int shown;

    private MonitorProgress(SubMonitor whole) {
        this.whole = whole;
        this.task = whole;
    }

    /** Fills a monitor that nobody else reports to. */
    public static MonitorProgress of(IProgressMonitor monitor) {
        return new MonitorProgress(SubMonitor.convert(monitor));
    }

    @Override
    public void begin(String name, long work) {
        whole.setTaskName(name);
        task = whole.setWorkRemaining(STEPS);
        totalWork = work;
        done = 0;
        shown = 0;
    }

    @Override
    public void worked(long work) {
        if (totalWork <= 0) {
            return;
        }
        done += work;
        int due = (int) Math.min(STEPS, Math.round((double) done / totalWork * STEPS));
        if (due > shown) {
            task.worked(due - shown);
            shown = due;
        }
    }

    @Override
    public boolean isCancelled() {
        return whole.isCanceled();
    }
}
