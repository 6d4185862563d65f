// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Channel;
import org.dutywright.capture.EvenTimeBase;
import org.dutywright.capture.Progress;
import org.dutywright.capture.Samples;

/** An input that floats between two levels, one of them for three samples at least; computed each time it is read. */
final class FloatingInput implements Samples {
    private static final int SAMPLES = 12_000_000;
    private static final int HELD = 3;

    /** Measures it and prints the status. Run with little memory: the pulses alone need 80 MB. */
    public static void main(String[] args) throws IOException {
        Capture capture = new Capture(
                List.of(),
                List.of(new Channel("signal1", "V")),
                EvenTimeBase.of(0, 1e6, SAMPLES),
                new FloatingInput(),
                Map.of());
        try (CaptureMeasurement measured = CaptureMeasurer.withInstalled()
                .measure(
                        capture,
                        Map.of("signal1", Measured.plan(Role.PWM)),
                        PulseSettings.defaults(),
                        50,
                        Progress.NONE)) {
            System.out.println(measured.channels().get(0).status().word());
        }
    }

    @Override
    public int channelCount() {
        return 1;
    }

    @Override
    public long sampleCount() {
        return SAMPLES;
    }

    @Override
    public void read(int channel, long firstSample, double[] target, int offset, int count) {
        for (int i = 0; i < count; i++) {
            long bits = (firstSample + i) / HELD * 0x9E3779B97F4A7C15L;
            bits = (bits ^ (bits >>> 29)) * 0xBF58476D1CE4E5B9L;
            target[offset + i] = (bits >>> 63) * 10.0;
        }
    }

    @Override
    public void close() {}
}
