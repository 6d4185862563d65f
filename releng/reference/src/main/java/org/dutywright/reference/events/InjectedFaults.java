// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.ChannelMeasurement;
import org.dutywright.pulse.PulseEvent;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.reference.Page;
import org.dutywright.reference.Study;
import org.dutywright.reference.events.Injection.Expected;

/** Sensors with one fault each: it must be found with its kind, within one cycle of its place, and nothing else. */
public final class InjectedFaults implements Study {
    private static final double[] NOISE_SHARES = {0, 0.01, 0.02, 0.03, 0.05};
    private static final int CAPTURES = 100;
    private static final int CYCLES = 120;
    private static final int LISTED = 400;

    /** Benches that are looked at for each that can have the fault. */
    private static final int TRIES = 40;

    private static final Map<String, Function<FaultDraw, Optional<Injection>>> FAULTS = new LinkedHashMap<>();

    static {
        FAULTS.put("one pulse missing", draw -> draw.absent(1));
        FAULTS.put("two pulses missing", draw -> draw.absent(2));
        FAULTS.put("dropout of 3 pulses", draw -> draw.absent(3));
        FAULTS.put("dropout of 8 pulses", draw -> draw.absent(8));
        FAULTS.put("dropout, wire open", FaultDraw::open);
        FAULTS.put("runt, low pulse", FaultDraw::lowPulse);
        FAULTS.put("runt, low spike", draw -> draw.spike(false));
        FAULTS.put("bounce", FaultDraw::bounce);
        FAULTS.put("extra pulse", draw -> draw.spike(true));
        FAULTS.put("period excursion", FaultDraw::oddPeriod);
        FAULTS.put("duty jump, 1 cycle", draw -> draw.dutyJump(1));
        FAULTS.put("duty jump, 9 cycles", draw -> draw.dutyJump(9));
        FAULTS.put("slow edge", FaultDraw::slowEdge);
        FAULTS.put("level shift", FaultDraw::levelShift);
        FAULTS.put("stuck low", draw -> draw.stuck(false));
        FAULTS.put("stuck high", draw -> draw.stuck(true));
    }

    @Override
    public String name() {
        return "events-faults";
    }

    @Override
    public String title() {
        return "Events of injected faults";
    }

    @Override
    public void run(double share, Page page) throws IOException {
        Page.Table table = new Page.Table(
                "fault", "noise", "injected", "found", "wrong kind", "missed", "beside", "worst displacement");
        List<String> wrong = new ArrayList<>();
        long captures = Math.max(1, Math.round(share * CAPTURES));
        long injected = 0;
        long seed = 1;
        for (Map.Entry<String, Function<FaultDraw, Optional<Injection>>> fault : FAULTS.entrySet()) {
            for (double level : NOISE_SHARES) {
                Tally tally = new Tally(fault.getKey());
                for (int i = 0; i < captures; i++) {
                    measure(seed + i, level, fault.getValue(), tally);
                }
                seed += CAPTURES;
                table.row(tally.row(level));
                injected += tally.injected;
                wrong.addAll(tally.wrong);
            }
        }
        page.paragraph(injected + " events of injected faults, " + wrong.size() + " of them not found as they are.");
        page.table(table);
        wrong.stream().limit(LISTED).forEach(it -> page.paragraph("- " + it));
    }

    private static void measure(
            long seed, double noiseShare, Function<FaultDraw, Optional<Injection>> fault, Tally tally)
            throws IOException {
        for (int i = 0; i < TRIES; i++) {
            long drawn = seed * TRIES + i;
            Random random = new Random(drawn * 6007 * 104_729);
            boolean moves = !tally.fault.startsWith("duty jump");
            Bench bench = new Bench(drawn, random.nextBoolean() ? 1 : 2, CYCLES, moves, false);
            int cycle = CYCLES / 3 + random.nextInt(CYCLES / 3);
            Optional<Injection> injection = fault.apply(new FaultDraw(bench, noiseShare, cycle, random));
            if (injection.isPresent()) {
                NoiseKind noise = random.nextBoolean() ? NoiseKind.WHITE : NoiseKind.BAND_LIMITED;
                judge(drawn, bench, bench.recorder(noise, noiseShare), injection.orElseThrow(), tally);
                return;
            }
        }
    }

    private static void judge(long seed, Bench bench, Recorder recorder, Injection injection, Tally tally)
            throws IOException {
        try (Capture capture = recorder.record(bench.scenario(List.of(injection.fault())));
                CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                        .measure(capture, bench.plans(), PulseSettings.defaults(), 50, Progress.NONE)) {
            tally.add(seed, bench.channel().periodSeconds(), injection, measured.channels());
        }
    }

    /** What was found of one fault under one noise. */
    private static final class Tally {
        private final String fault;
        private long injected;
        private long found;
        private long wrongKind;
        private long missed;
        private long beside;
        private double worstCycles;
        private final List<String> wrong = new ArrayList<>();

        Tally(String fault) {
            this.fault = fault;
        }

        private void add(long seed, double period, Injection injection, List<ChannelMeasurement> channels) {
            List<PulseEvent> left = new ArrayList<>(channels.get(0).events());
            for (Expected expected : injection.expected()) {
                injected++;
                Optional<PulseEvent> match = left.stream()
                        .filter(it -> it.kind() == expected.kind() && displacement(it, expected) <= period)
                        .findFirst();
                if (match.isPresent()) {
                    found++;
                    worstCycles = Math.max(worstCycles, displacement(match.orElseThrow(), expected) / period);
                    left.remove(match.orElseThrow());
                } else if (left.stream().anyMatch(it -> isAt(it, expected, period))) {
                    wrongKind++;
                } else {
                    missed++;
                }
                if (match.isEmpty()) {
                    wrong.add("seed " + seed + ": " + injection.fault() + ", found " + words(left));
                }
            }
            channels.subList(1, channels.size()).forEach(channel -> left.addAll(channel.events()));
            beside += left.size();
            if (!left.isEmpty()) {
                wrong.add("seed " + seed + ": " + injection.fault() + ", beside it " + words(left));
            }
        }

        private static double displacement(PulseEvent event, Expected expected) {
            double atStart = Math.abs(event.startSeconds() - expected.startSeconds());
            boolean toldEnd = expected.endSeconds() > expected.startSeconds();
            return toldEnd ? Math.max(atStart, Math.abs(event.endSeconds() - expected.endSeconds())) : atStart;
        }

        private static boolean isAt(PulseEvent event, Expected expected, double period) {
            return event.startSeconds() <= expected.endSeconds() + period
                    && event.endSeconds() >= expected.startSeconds() - period;
        }

        private static String words(List<PulseEvent> events) {
            return events.stream()
                    .limit(3)
                    .map(it -> it.kind().word() + " at " + it.startSeconds() + " s (" + it.detail() + ")")
                    .toList()
                    .toString();
        }

        private Object[] row(double noiseShare) {
            return new Object[] {
                fault,
                Math.round(100 * noiseShare) + " %",
                injected,
                found,
                wrongKind,
                missed,
                beside,
                found == 0 ? "-" : String.format(Locale.ROOT, "%.2f cycles", worstCycles)
            };
        }
    }
}
