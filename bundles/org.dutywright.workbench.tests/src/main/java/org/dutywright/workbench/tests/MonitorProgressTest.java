// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.dutywright.capture.CancelledException;
import org.dutywright.workbench.MonitorProgress;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.junit.jupiter.api.Test;

/** The core's progress fills a progress monitor, whatever it counts in. */
final class MonitorProgressTest {
    private final Recorder monitor = new Recorder();
    private final MonitorProgress progress = MonitorProgress.of(monitor);

    @Test
    void all_the_work_of_a_task_fills_the_monitor() {
        progress.begin("reading", 5_000_000_000L);
        for (int part = 0; part < 50; part++) {
            progress.worked(100_000_000L);
        }

        // The platform reckons shares in floating point, so the whole is met but for a rounding.
        assertThat(monitor.share()).isBetween(0.999, 1.001);
    }

    @Test
    void half_of_the_work_is_half_of_the_monitor() {
        progress.begin("reading", 8);
        progress.worked(4);

        assertThat(monitor.share()).isBetween(0.499, 0.501);
    }

    @Test
    void more_work_than_was_announced_does_not_overfill_it() {
        progress.begin("reading", 10);
        progress.worked(1000);
        progress.worked(1000);

        assertThat(monitor.share()).isLessThanOrEqualTo(1.001);
    }

    @Test
    void work_of_an_unknown_amount_moves_nothing() {
        progress.begin("reading", 0);
        progress.worked(1000);

        assertThat(monitor.share()).isZero();
    }

    @Test
    void the_name_of_the_task_is_shown() {
        progress.begin("measuring signal1", 10);

        assertThat(monitor.task).isEqualTo("measuring signal1");
    }

    @Test
    void a_monitor_that_wants_to_stop_stops_the_work() {
        assertThat(progress.isCancelled()).isFalse();

        monitor.setCanceled(true);

        assertThat(progress.isCancelled()).isTrue();
        assertThatExceptionOfType(CancelledException.class).isThrownBy(progress::checkCancelled);
    }

    private static final class Recorder extends NullProgressMonitor {
        private String task = "";
        private double total;
        private double worked;

        double share() {
            return worked / total;
        }

        @Override
        public void beginTask(String name, int totalWork) {
            total = totalWork;
        }

        @Override
        public void setTaskName(String name) {
            task = name;
        }

        @Override
        public void worked(int work) {
            worked += work;
        }

        @Override
        public void internalWorked(double work) {
            worked += work;
        }
    }
}
