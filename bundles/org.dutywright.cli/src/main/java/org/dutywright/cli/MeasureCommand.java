// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.dutywright.capture.Capture;
import org.dutywright.capture.UnreadableException;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.report.MeasureJson;
import org.dutywright.report.MeasureText;
import org.dutywright.report.RunSettings;
import org.dutywright.text.ProblemsException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Measures every cycle of every channel of one capture. */
@Command(name = "measure", description = "Measures every cycle of every channel of one capture.")
final class MeasureCommand implements Callable<Integer> {
    private final Session session;

    @Mixin
    private CaptureOptions capture;

    @Mixin
    private ResultOptions results;

    MeasureCommand(Session session) {
        this.session = session;
    }

    @Override
    public Integer call() throws IOException, UnreadableException, ProblemsException {
        session.beQuiet(results.quiet());
        CaptureJob job = CaptureJob.of(capture);
        results.check(job, job.inputs());
        RunSettings run = job.runSettings(Optional.empty(), OptionalDouble.empty(), List.of());
        try (Capture opened = job.open(session);
                CaptureMeasurement measured = job.measure(opened, job.plans(), session)) {
            results.write(measured, stream -> MeasureJson.write(measured, run, stream), session);
            CaptureJob.tellGuesses(opened, session);
            if (!results.jsonToStandardOutput()) {
                session.print(MeasureText.lines(measured));
            }
        }
        return ExitStatus.DONE;
    }
}
