// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.pulse.Status;
import org.dutywright.reference.Page;
import org.dutywright.reference.Study;

/** Healthy sensors, moved and recorded in all ways: not one event may be found. */
public final class CleanCaptures implements Study {
    private static final double[] NOISE_SHARES = {0, 0.01, 0.02, 0.03, 0.05};
    private static final int CAPTURES = 64;
    private static final int CYCLES = 1000;
    private static final int LISTED = 60;

    @Override
    public String name() {
        return "events-clean";
    }

    @Override
    public String title() {
        return "Events on healthy captures";
    }

    @Override
    public void run(double share, Page page) throws IOException {
        Page.Table table =
                new Page.Table("noise", "RMS of swing", "captures", "cycles", "not measured", "false events");
        List<String> wrong = new ArrayList<>();
        long captures = Math.max(1, Math.round(share * CAPTURES));
        long total = 0;
        long seed = 0;
        for (NoiseKind noise : NoiseKind.values()) {
            for (double level : NOISE_SHARES) {
                Tally tally = new Tally();
                for (int i = 0; i < captures; i++) {
                    measure(seed + i, noise, level, tally);
                }
                seed += CAPTURES;
                table.row(
                        noise.word(),
                        Math.round(100 * level) + " %",
                        captures,
                        tally.cycles,
                        tally.unmeasured,
                        tally.events);
                total += tally.cycles;
                wrong.addAll(tally.wrong);
            }
        }
        page.paragraph(
                total + " cycles of healthy sensors, " + wrong.size() + " false events or channels not measured.");
        page.table(table);
        wrong.stream().limit(LISTED).forEach(it -> page.paragraph("- " + it));
    }

    private static void measure(long seed, NoiseKind noise, double noiseShare, Tally tally) throws IOException {
        Bench bench = new Bench(seed, seed % 3 == 0 ? 1 : 2, CYCLES, true, true);
        try (Capture capture = bench.recorder(noise, noiseShare).record(bench.scenario(List.of()));
                CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                        .measure(capture, bench.plans(), PulseSettings.defaults(), 50, Progress.NONE)) {
            measured.channels().forEach(channel -> tally.add(seed, channel));
        }
    }

    /** What was found under one kind of noise. */
    private static final class Tally {
        private long cycles;
        private long unmeasured;
        private long events;
        private final List<String> wrong = new ArrayList<>();

        private void add(long seed, ChannelMeasurement channel) {
            cycles += channel.cycleCount();
            if (channel.status() != Status.OK) {
                unmeasured++;
                wrong.add("seed " + seed + ": " + channel.channel().name() + " is " + channel.statusReason());
            }
            for (PulseEvent event : channel.events()) {
                wrong.add("seed " + seed + ": " + channel.channel().name() + " at " + event.startSeconds() + " s "
                        + event.kind().word() + ", " + event.detail());
            }
            events += channel.eventCounts().values().stream()
                    .mapToLong(Long::longValue)
                    .sum();
        }
    }
}
