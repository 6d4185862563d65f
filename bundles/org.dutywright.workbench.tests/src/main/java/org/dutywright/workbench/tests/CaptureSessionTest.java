// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dutywright.pulse.ActiveLevel;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.ChannelPlan;
import org.dutywright.pulse.Outcome;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.RecorderSettings;
import org.dutywright.workbench.internal.Jobs;
import org.dutywright.workbench.session.CaptureSession;
import org.dutywright.workbench.session.CaptureSessions;
import org.dutywright.workbench.session.MeasuringPreferences;
import org.dutywright.workbench.session.SessionState.Phase;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A capture file is opened and measured once for all that show it. */
@WindowTest
final class CaptureSessionTest {
    private IProject project;

    @BeforeEach
    void makeJob() throws CoreException {
        project = Jobs.create("sessions", Optional.empty(), new NullProgressMonitor());
    }

    @AfterEach
    void deleteJob() throws CoreException {
        Pump.until("the jobs are over", () -> Job.getJobManager().find(CaptureSessions.FAMILY).length == 0);
        project.delete(true, true, new NullProgressMonitor());
    }

    @Test
    void a_small_capture_is_opened_summed_up_and_measured() throws Exception {
        CaptureSession session = CaptureSessions.acquire(file("small.csv", pulses(0.25)));
        try {
            await(session, Phase.DONE);

            assertThat(session.capture().orElseThrow().sampleCount()).isEqualTo(20_000);
            assertThat(session.overview(0)).isPresent();
            assertThat(session.overview(1)).isEmpty();
            // closed form: a square wave of 100 Hz that is high for a quarter of its period
            assertThat(mean(session, "frequency")).isCloseTo(100, within(0.01));
            assertThat(mean(session, "duty")).isCloseTo(25, within(0.1));
        } finally {
            CaptureSessions.release(session);
        }
    }

    @Test
    void two_holders_share_one_session() throws Exception {
        IFile file = file("shared.csv", pulses(0.25));
        CaptureSession first = CaptureSessions.acquire(file);
        CaptureSession second = CaptureSessions.acquire(file);

        assertThat(second).isSameAs(first);
        CaptureSessions.release(first);
        await(second, Phase.DONE);
        CaptureSessions.release(second);
        CaptureSession later = CaptureSessions.acquire(file);
        assertThat(later).isNotSameAs(first);
        CaptureSessions.release(later);
    }

    @Test
    void a_changed_file_is_measured_anew() throws Exception {
        IFile file = file("changing.csv", pulses(0.25));
        CaptureSession session = CaptureSessions.acquire(file);
        try {
            await(session, Phase.DONE);
            file.setContents(content(pulses(0.5)), true, false, null);
            Pump.until(
                    "the new content is measured",
                    () -> session.state().phase() == Phase.DONE && mean(session, "duty") > 40);

            // closed form: high for half of the period
            assertThat(mean(session, "duty")).isCloseTo(50, within(0.1));
        } finally {
            CaptureSessions.release(session);
        }
    }

    @Test
    void what_is_known_of_a_channel_leads_to_a_new_measurement() throws Exception {
        CaptureSession session = CaptureSessions.acquire(file("low.csv", pulses(0.25)));
        try {
            session.measureWith(Map.of(
                    "signal1",
                    new ChannelPlan(
                            Optional.empty(), Optional.of(ActiveLevel.LOW), Optional.empty(), OptionalDouble.empty())));
            await(session, Phase.DONE);
            // closed form: low for the other three quarters of the period
            assertThat(mean(session, "duty")).isCloseTo(75, within(0.1));

            session.measureWith(Map.of());
            await(session, Phase.DONE);
            assertThat(mean(session, "duty")).isCloseTo(25, within(0.1));
        } finally {
            CaptureSessions.release(session);
        }
    }

    @Test
    void changed_settings_lead_to_a_new_measurement() throws Exception {
        CaptureSession session = CaptureSessions.acquire(file("set.csv", pulses(0.25)));
        PulseSettings changed = PulseSettings.defaults().with(RecorderSettings.TIME_BASE, 5);
        try {
            await(session, Phase.DONE);
            assertThat(session.measurement().orElseThrow().settings()).isEqualTo(PulseSettings.defaults());

            MeasuringPreferences.store(changed);
            Pump.until(
                    "it is measured with the changed settings",
                    () -> session.measurement()
                            .filter(it -> it.settings().equals(changed))
                            .isPresent());
        } finally {
            CaptureSessions.release(session);
            MeasuringPreferences.store(PulseSettings.defaults());
        }
    }

    @Test
    void a_file_that_is_no_capture_fails_with_words() throws Exception {
        CaptureSession session = CaptureSessions.acquire(file("broken.csv", "time (s),signal1 (V)\n0,1\n1,x\n2,1\n"));
        try {
            await(session, Phase.FAILED);

            assertThat(session.state().message()).contains("broken.csv").contains("line 3");
        } finally {
            CaptureSessions.release(session);
        }
    }

    @Test
    void a_cancelled_session_says_so_and_can_start_again() throws Exception {
        CaptureSession session = CaptureSessions.acquire(file("cancelled.csv", pulses(0.25)));
        try {
            session.cancel();
            await(session, Phase.CANCELLED);

            session.restart();
            await(session, Phase.DONE);
            assertThat(session.measurement()).isPresent();
        } finally {
            CaptureSessions.release(session);
        }
    }

    private static void await(CaptureSession session, Phase phase) {
        Pump.until("the session is " + phase, () -> session.state().phase() == phase);
    }

    private static double mean(CaptureSession session, String result) {
        ChannelMeasurement channel =
                session.measurement().orElseThrow().channels().get(0);
        return ((Outcome.OfCycles) channel.results().get(result).outcome())
                .statistic()
                .mean();
    }

    private IFile file(String name, String text) throws CoreException {
        IFile file = project.getFolder(Jobs.CAPTURES).getFile(name);
        file.create(content(text), true, null);
        return file;
    }

    private static ByteArrayInputStream content(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Two seconds of 100 Hz at 10,000 samples a second. */
    private static String pulses(double highShare) {
        StringBuilder text = new StringBuilder("time (s),signal1 (V)\n");
        for (int i = 0; i < 20_000; i++) {
            double value = i % 100 < 100 * highShare ? 5 : 0;
            text.append(String.format(Locale.ROOT, "%.4f,%.1f%n", i / 10_000.0, value));
        }
        return text.toString();
    }
}
