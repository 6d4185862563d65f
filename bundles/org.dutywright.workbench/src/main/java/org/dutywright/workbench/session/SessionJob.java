// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Overview;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.workbench.MonitorProgress;
import org.dutywright.workbench.WindowWords;
import org.dutywright.workbench.session.SessionState.Phase;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.IJobChangeEvent;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.core.runtime.jobs.JobChangeAdapter;

/**
 * Opens, sums up and measures one capture, and closes it. All that is slow or holds files happens in this job, which the
 * platform never runs twice at once; the other threads only ask for a run and read what is known.
 */
final class SessionJob extends Job {
    private final IFile file;
    private final Runnable changed;
    private volatile Known known = Known.nothing();
    private volatile SessionProgress progress = new SessionProgress(Progress.NONE, () -> {});
    private Optional<Map<String, ChannelPlan>> wanted = Optional.empty();
    private boolean requested;
    private boolean forget;
    private boolean disposed;
    private int replacing;
    private volatile boolean begun;

    SessionJob(IFile file, Runnable changed) {
        super("Measuring " + file.getName());
        this.file = file;
        this.changed = changed;
        setPriority(Job.LONG);
        addJobChangeListener(new JobChangeAdapter() {
            @Override
            public void done(IJobChangeEvent event) {
                ended(event.getResult());
            }
        });
    }

    @Override
    public boolean belongsTo(Object family) {
        return family == CaptureSessions.FAMILY || family.equals(file);
    }

    Known known() {
        return known;
    }

    Doing doing() {
        return progress.doing();
    }

    void start() {
        synchronized (this) {
            wish(Phase.OPENING);
        }
        runAgain();
    }

    void restart() {
        synchronized (this) {
            forget = true;
            wish(Phase.OPENING);
        }
        runAgain();
    }

    void measureWith(Map<String, ChannelPlan> plans) {
        synchronized (this) {
            wanted = Optional.of(Map.copyOf(plans));
            Phase phase = known.state().phase();
            boolean willBe = phase == Phase.OPENING;
            boolean is = known.plans().equals(plans) && (phase == Phase.MEASURING || phase == Phase.DONE);
            if (willBe || is) {
                return;
            }
            wish(known.capture().isPresent() ? Phase.MEASURING : Phase.OPENING);
        }
        runAgain();
    }

    /** What has not begun yet asks for the settings when it does. */
    void measureWith(PulseSettings settings) {
        synchronized (this) {
            Phase phase = known.state().phase();
            boolean done = phase == Phase.DONE
                    && known.measurement()
                            .filter(it -> !it.settings().equals(settings))
                            .isPresent();
            if (!done && phase != Phase.MEASURING) {
                return;
            }
            wish(Phase.MEASURING);
        }
        runAgain();
    }

    void dispose() {
        synchronized (this) {
            disposed = true;
            wish(known.state().phase());
        }
        runAgain();
    }

    /** Stops a run, and takes one back that has not begun. */
    void stop() {
        boolean waited;
        synchronized (this) {
            waited = requested;
            requested = false;
        }
        waited |= cancel();
        synchronized (this) {
            if (waited && !requested && known.state().isBusy()) {
                update(it -> it.with(SessionState.of(Phase.CANCELLED)));
            }
        }
    }

    // The platform takes a job back that has not begun without asking it, as from the Progress view.
    private synchronized void ended(IStatus result) {
        boolean takenBack = !begun && replacing == 0 && result.getSeverity() == IStatus.CANCEL;
        begun = false;
        if (takenBack && requested && known.state().isBusy()) {
            requested = false;
            update(it -> it.with(SessionState.of(Phase.CANCELLED)));
        }
    }

    private void wish(Phase phase) {
        replacing++;
        requested = true;
        update(it -> it.with(SessionState.of(phase)));
    }

    // A job that runs is run once more after it has ended. Not under the monitor: cancelling waits for the listeners
    // of the run before, and ours takes the monitor.
    private void runAgain() {
        cancel();
        synchronized (this) {
            replacing--;
        }
        schedule();
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        begun = true;
        try {
            if (!begin()) {
                return Status.OK_STATUS;
            }
            progress = new SessionProgress(MonitorProgress.of(monitor), changed);
            work(progress);
            return Status.OK_STATUS;
        } catch (CancelledException e) {
            end(it -> it, SessionState.of(Phase.CANCELLED));
            return Status.CANCEL_STATUS;
        } catch (UnreadableException | IOException e) {
            // Shown where the capture would be; a dialog on top would say it twice.
            end(it -> it, SessionState.failed(WindowWords.of(e.getMessage())));
            return Status.OK_STATUS;
        } catch (RuntimeException e) {
            ILog.of(SessionJob.class).error("Measuring " + file.getFullPath() + " failed.", e);
            end(
                    it -> it,
                    SessionState.failed("An error inside the program stopped the work; the error log tells more."));
            return Status.OK_STATUS;
        }
    }

    /** Whether there is work to do; closes what is of no use any more. */
    private boolean begin() throws IOException {
        boolean drop;
        boolean work;
        synchronized (this) {
            drop = forget || disposed;
            work = requested && !disposed;
            requested = false;
            forget = false;
        }
        if (drop) {
            close();
        }
        return work;
    }

    private void work(SessionProgress steps) throws IOException, UnreadableException {
        if (known.capture().isEmpty()) {
            Capture opened = Captures.open(List.of(path()), ReadSettings.none(), steps);
            update(it -> it.opened(opened));
        }
        Capture capture = known.capture().orElseThrow();
        for (int channel = known.overviews().size();
                channel < capture.channels().size();
                channel++) {
            Overview overview = Overview.of(capture, channel, steps);
            update(it -> it.summedUp(overview));
        }
        Map<String, ChannelPlan> usual = SensorChoice.plans(file, capture);
        Optional<CaptureMeasurement> before = known.measurement();
        Map<String, ChannelPlan> plans = beginMeasuring(usual);
        if (before.isPresent()) {
            before.get().close();
        }
        CaptureMeasurement measured =
                CaptureMeasurer.withInstalled().measure(capture, plans, MeasuringPreferences.current(), steps);
        end(it -> it.measured(measured), SessionState.of(Phase.DONE));
    }

    // In one step, so that a wish is either seen here or sees the plans used.
    private synchronized Map<String, ChannelPlan> beginMeasuring(Map<String, ChannelPlan> usual) {
        Map<String, ChannelPlan> plans = wanted.orElse(usual);
        update(it -> it.measuring(plans));
        return plans;
    }

    // Where another run waits already, its state is the one to show.
    private synchronized void end(UnaryOperator<Known> change, SessionState state) {
        update(it -> requested ? change.apply(it) : change.apply(it).with(state));
    }

    private synchronized void update(UnaryOperator<Known> change) {
        known = change.apply(known);
        changed.run();
    }

    private void close() throws IOException {
        Known old = known;
        update(it -> Known.nothing());
        try (Capture capture = old.capture().orElse(null);
                CaptureMeasurement measurement = old.measurement().orElse(null)) {
            // Closing is all there is to do.
        }
    }

    private Path path() throws UnreadableException {
        IPath location = file.getLocation();
        if (location == null) {
            throw new UnreadableException(
                    Path.of(file.getFullPath().toString()),
                    "",
                    "is not in the file system",
                    "copy it to a folder of this machine");
        }
        return location.toPath();
    }
}
