// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.Cycle;
import org.dutywright.pulse.EventKind;
import org.dutywright.pulse.PulseSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The way from files that are no tables to what is measured. */
class FormatsTest {
    private static final int CYCLES = 300;

    @TempDir
    Path folder;

    /** A dump holds changes only: each edge is measured where it stands, and a long silence is a dropout, not a gap. */
    @Test
    void theEdgesOfADumpOfChangesAreExact() throws Exception {
        // closed form: 5 ms, high for 1.5 ms, from 0.3 ms on; pulses 100 to 119 are absent
        Path file = Files.writeString(folder.resolve("pedal.vcd"), dump());
        try (Capture capture = Captures.open(List.of(file), ReadSettings.none(), Progress.NONE);
                CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                        .measure(capture, Map.of(), PulseSettings.defaults(), 50, Progress.NONE)) {
            ChannelMeasurement signal = measured.channels().get(0);
            assertThat(signal.eventCounts()).isEqualTo(Map.of(EventKind.DROPOUT, 1L));
            assertThat(signal.cycleCount()).isEqualTo(CYCLES - 20 - 1);
            for (long i = 0; i < signal.cycleCount(); i++) {
                Cycle cycle = signal.cycles().get(i);
                long pulse = i < 100 ? i : i + 20;
                // instants of microseconds in floating point, some units in the last place off
                assertThat(cycle.startSeconds()).isCloseTo(300e-6 + pulse * 5e-3, within(1e-12));
                assertThat(cycle.pulseDurationSeconds()).isCloseTo(1.5e-3, within(1e-12));
            }
        }
    }

    private static String dump() {
        StringBuilder dump =
                new StringBuilder("$timescale 1us $end $var wire 1 ! signal1 $end $enddefinitions $end\n#0 0!\n");
        for (int i = 0; i < CYCLES; i++) {
            if (i < 100 || i >= 120) {
                int start = 300 + 5000 * i;
                dump.append("#" + start + " 1!\n#" + (start + 1500) + " 0!\n");
            }
        }
        return dump.toString();
    }
}
