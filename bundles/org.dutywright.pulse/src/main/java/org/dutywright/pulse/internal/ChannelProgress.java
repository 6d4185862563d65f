// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import org.dutywright.capture.Progress;

/** Passes on the work on one channel up to what was planned for it; how many passes it takes shows only on the way. */
public final class ChannelProgress implements Progress {
    private final Progress whole;
    private long left;

    /**
     * A part of a task.
     *
     * @param whole the task, already begun
     * @param planned work planned for the channel
     */
    public ChannelProgress(Progress whole, long planned) {
        this.whole = whole;
        left = planned;
    }

    @Override
    public void begin(String task, long totalWork) {
        throw new UnsupportedOperationException("the task has begun");
    }

    @Override
    public void worked(long work) {
        long now = Math.min(work, left);
        left -= now;
        if (now > 0) {
            whole.worked(now);
        }
    }

    @Override
    public boolean isCancelled() {
        return whole.isCancelled();
    }

    /** Reports what is left of the planned work. */
    public void finish() {
        worked(left);
    }
}
