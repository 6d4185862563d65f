// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicBoolean;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Overview;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.PulseSettings;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.OperationCanceledException;
import org.eclipse.swt.SWTException;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;

/**
 * What the workbench knows of one capture file: opened and measured once, shared by all parts that show it. Its getters
 * may be called from any thread; each gives what is there now. Holders get one by {@link CaptureSessions#acquire} and
 * give it back by {@link CaptureSessions#release}.
 */
public final class CaptureSession {
    private final IFile file;
    private final SessionJob job;
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private final AtomicBoolean told = new AtomicBoolean();

    CaptureSession(IFile file) {
        this.file = file;
        this.job = new SessionJob(file, this::tell);
    }

    /** The file. */
    public IFile file() {
        return file;
    }

    /** How far the work is. */
    public SessionState state() {
        return job.known().state();
    }

    /** What is being done; means something while the state is busy. */
    public Doing doing() {
        return job.doing();
    }

    /** The capture, as soon as it is opened. */
    public Optional<Capture> capture() {
        return job.known().capture();
    }

    /** What is drawn of one channel, as soon as it is there. */
    public Optional<Overview> overview(int channel) {
        List<Overview> overviews = job.known().overviews();
        return channel < overviews.size() ? Optional.of(overviews.get(channel)) : Optional.empty();
    }

    /** What was measured, once it is done. */
    public Optional<CaptureMeasurement> measurement() {
        return job.known().measurement();
    }

    /** What was taken for known of the channels when measuring, by their names; empty before. */
    public Map<String, ChannelPlan> plans() {
        return job.known().plans();
    }

    /** Asks the work to stop. */
    public void cancel() {
        job.stop();
    }

    /** Reads and measures anew, as after a change of the file. */
    public void restart() {
        job.restart();
    }

    /**
     * Measures with what is known of the channels, unless that was done already.
     *
     * @param plans by the capture's names
     */
    public void measureWith(Map<String, ChannelPlan> plans) {
        job.measureWith(plans);
    }

    /** Measures anew where that was done, or is being done, with other settings. */
    void measureWith(PulseSettings settings) {
        job.measureWith(settings);
    }

    /**
     * Waits until no work goes on. Not for the user-interface thread.
     *
     * @return the state then
     * @throws OperationCanceledException if the monitor is cancelled meanwhile
     */
    public SessionState await(IProgressMonitor monitor) throws InterruptedException {
        while (state().isBusy()) {
            job.join(0, monitor);
            if (monitor.isCanceled()) {
                throw new OperationCanceledException();
            }
        }
        return state();
    }

    /** Adds what is run in the user-interface thread after something changed; once for several changes in a row. */
    public void addListener(Runnable inUiThread) {
        listeners.add(inUiThread);
    }

    /** Takes a listener away; after this call in the user-interface thread it is not run any more. */
    public void removeListener(Runnable inUiThread) {
        listeners.remove(inUiThread);
    }

    void start() {
        job.start();
    }

    void dispose() {
        listeners.clear();
        job.dispose();
    }

    private void tell() {
        if (listeners.isEmpty() || !PlatformUI.isWorkbenchRunning()) {
            return;
        }
        Display display = PlatformUI.getWorkbench().getDisplay();
        if (told.compareAndSet(false, true)) {
            try {
                display.asyncExec(() -> {
                    told.set(false);
                    listeners.forEach(Runnable::run);
                });
            } catch (SWTException e) {
                // The workbench closes, and nobody is left to be told.
                told.set(true);
            }
        }
    }
}
