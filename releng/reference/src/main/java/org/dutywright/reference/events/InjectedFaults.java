// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference.events;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.CaptureMeasurer;
import org.dutywright.pulse.PulseSettings;
import org.dutywright.reference.Page;
import org.dutywright.reference.Study;

/** Sensors with one fault each: it must be found with its kind, within one cycle of its place, and nothing else. */
public final class InjectedFaults implements Study {
    private static final double[] NOISE_SHARES = {0, 0.01, 0.02, 0.03, 0.05};
    private static final int CAPTURES = 100;
    private static final int CYCLES = 120;
    private static final int LISTED = 60;

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
        long injected = 0;
        for (Tally tally : tallies(share)) {
            table.row(tally.row());
            injected += tally.injected;
            wrong.addAll(tally.wrong);
        }
        page.paragraph("%d events of injected faults, %d not found as they are or with another one beside them. "
                        .formatted(injected, wrong.size())
                + "Half of the noise is white and half band-limited; its RMS is a share of the swing. "
                + "The displacement is that of the start, and for a span also that of its end.");
        page.table(table);
        wrong.stream().limit(LISTED).forEach(it -> page.paragraph("- " + it));
    }

    /** What was found of each fault under each noise. */
    static List<Tally> tallies(double share) throws IOException {
        List<Tally> tallies = new ArrayList<>();
        long captures = Math.max(1, Math.round(share * CAPTURES));
        long seed = 1;
        for (Map.Entry<String, Function<FaultDraw, Optional<Injection>>> fault : FAULTS.entrySet()) {
            for (double noiseShare : NOISE_SHARES) {
                Tally tally = new Tally(fault.getKey(), noiseShare);
                for (int i = 0; i < captures; i++) {
                    measure(seed + i, fault.getValue(), tally);
                }
                seed += CAPTURES;
                tallies.add(tally);
            }
        }
        return tallies;
    }

    private static void measure(long seed, Function<FaultDraw, Optional<Injection>> fault, Tally tally)
            throws IOException {
        for (int i = 0; i < TRIES; i++) {
            if (isMeasured(seed * TRIES + i, fault, tally)) {
                return;
            }
        }
    }

    /** What is found of one drawn case; injects nothing where the bench of that number cannot have the fault. */
    static Tally drawn(long number, String fault, double noiseShare) throws IOException {
        Tally tally = new Tally(fault, noiseShare);
        isMeasured(number, FAULTS.get(fault), tally);
        return tally;
    }

    private static boolean isMeasured(long drawn, Function<FaultDraw, Optional<Injection>> fault, Tally tally)
            throws IOException {
        Random random = new Random(drawn * 6007 * 104_729);
        boolean moves = !tally.fault.startsWith("duty jump");
        Bench bench = new Bench(drawn, random.nextBoolean() ? 1 : 2, CYCLES, moves, false);
        int cycle = CYCLES / 3 + random.nextInt(CYCLES / 3);
        Optional<Injection> injection = fault.apply(new FaultDraw(bench, tally.noiseShare, cycle, random));
        if (injection.isPresent()) {
            NoiseKind noise = random.nextBoolean() ? NoiseKind.WHITE : NoiseKind.BAND_LIMITED;
            judge(drawn, bench, bench.recorder(noise, tally.noiseShare), injection.orElseThrow(), tally);
        }
        return injection.isPresent();
    }

    private static void judge(long seed, Bench bench, Recorder recorder, Injection injection, Tally tally)
            throws IOException {
        try (Capture capture = recorder.record(bench.scenario(List.of(injection.fault())));
                CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                        .measure(capture, bench.plans(), PulseSettings.defaults(), 50, Progress.NONE)) {
            tally.add(seed, bench.channel().periodSeconds(), injection, measured.channels());
        }
    }
}
