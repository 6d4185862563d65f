// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;
import org.dutywright.workbench.capture.view.Drawing;
import org.dutywright.workbench.capture.view.TimeScale;
import org.dutywright.workbench.capture.view.Traces;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/**
 * Works out what to draw, away from the user-interface thread. Only the latest wish counts: while the user turns the
 * wheel, drawings that are out of date already are given up.
 */
final class DrawingJob extends Job {
    private final Traces traces;
    private final Consumer<Drawing> receiver;
    private volatile Optional<TimeScale> wanted = Optional.empty();
    private volatile boolean closed;

    /** A job that gives drawings to a receiver, in the job's thread. */
    DrawingJob(Traces traces, Consumer<Drawing> receiver) {
        super("Drawing traces");
        this.traces = traces;
        this.receiver = receiver;
        setSystem(true);
        setPriority(INTERACTIVE);
    }

    void want(TimeScale scale) {
        wanted = Optional.of(scale);
        schedule();
    }

    void close() {
        closed = true;
        cancel();
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        Optional<TimeScale> scale = wanted;
        try {
            if (scale.isPresent() && !closed) {
                traces.draw(scale.get(), () -> closed || !wanted.equals(scale)).ifPresent(receiver);
            }
        } catch (IOException | IllegalStateException e) {
            // A capture that was closed meanwhile cannot be read, and nobody waits for its drawing.
            if (!closed) {
                ILog.of(DrawingJob.class).error("The traces could not be drawn.", e);
            }
        }
        return Status.OK_STATUS;
    }
}
