// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.io.IOException;
import java.util.Map;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Capture;
import org.dutywright.diagnosis.CheckResult;
import org.dutywright.diagnosis.Checker;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.workbench.MonitorProgress;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.session.SensorChoice;
import org.dutywright.workbench.session.SessionState;
import org.dutywright.workbench.session.SessionState.Phase;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.OperationCanceledException;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.osgi.util.NLS;

/** Measures a capture as the sensor wants it, unless that was done, compares it with the sensor, and leaves markers. */
public final class CheckJob extends Job {
    /** Family of these jobs. */
    public static final Object FAMILY = CheckJob.class;

    private final IFile file;
    private final CheckWish wish;

    CheckJob(IFile file, CheckWish wish) {
        super(NLS.bind(Messages.checking, file.getName()));
        this.file = file;
        this.wish = wish;
        setUser(true);
    }

    @Override
    public boolean belongsTo(Object family) {
        return family == FAMILY || family.equals(file);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        try {
            SensorChoice.remember(file, wish.sensor().id());
            CaptureSession session = CaptureSessions.acquire(file);
            try {
                return run(session, monitor);
            } finally {
                CaptureSessions.release(session);
            }
        } catch (CancelledException | OperationCanceledException e) {
            return Status.CANCEL_STATUS;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Status.CANCEL_STATUS;
        } catch (IOException | CoreException e) {
            CheckReports.put(file, CheckReport.failed(e.getMessage()));
            return Status.OK_STATUS;
        }
    }

    private IStatus run(CaptureSession session, IProgressMonitor monitor)
            throws InterruptedException, IOException, CoreException {
        SessionState state = session.await(monitor);
        if (state.phase() == Phase.CANCELLED && session.capture().isEmpty()) {
            session.restart();
            state = session.await(monitor);
        }
        if (session.capture().isPresent()) {
            Capture capture = session.capture().get();
            session.measureWith(SensorChoice.plans(wish.sensor(), capture));
            state = session.await(monitor);
        }
        return switch (state.phase()) {
            case DONE -> judge(session.measurement().orElseThrow(), monitor);
            case CANCELLED -> Status.CANCEL_STATUS;
            default -> {
                CheckReports.put(file, CheckReport.failed(state.message()));
                yield Status.OK_STATUS;
            }
        };
    }

    private IStatus judge(CaptureMeasurement measurement, IProgressMonitor monitor) throws IOException, CoreException {
        CheckResult result = Checker.check(
                measurement,
                wish.sensor(),
                Checker.match(wish.sensor(), measurement.capture(), Map.of()),
                wish.settings(),
                MonitorProgress.of(monitor));
        FindingMarkers.replace(file, FindingList.of(result));
        CheckReports.put(file, CheckReport.of(result));
        return Status.OK_STATUS;
    }
}
