// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.vcd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Captures;
import org.dutywright.capture.Progress;
import org.dutywright.capture.ReadSettings;
import org.dutywright.capture.UnreadableException;
import org.dutywright.capture.formats.CaptureValues;
import org.dutywright.capture.formats.SharedData;
import org.junit.jupiter.api.Test;

/** Against dumps that a Verilog simulator wrote (../shared/data/vcd); expected is what stands in them, read by eye. */
class VcdSharedDataTest {

    /** A clock that turns every second from 0 to 10 s, and its negation. */
    @Test
    void theNegator() throws Exception {
        try (Capture capture = open("negator_tb.vcd")) {
            assertThat(CaptureValues.channels(capture)).containsExactly("out", "clock");
            assertThat(instantsOfChange(capture, "clock"))
                    .containsExactly(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0);
            double[] out = CaptureValues.valuesOf(capture, 0);
            double[] clock = CaptureValues.valuesOf(capture, 1);
            for (int i = 0; i < out.length; i++) {
                assertThat(out[i]).isEqualTo(1 - clock[i]);
            }
        }
    }

    /** A counter of two bits, known from 2 s on, which counts at 6, 8 … 24 s; reset falls at 3, enable goes at 5 and 25 s. */
    @Test
    void theCounter() throws Exception {
        try (Capture capture = open("counter_tb.vcd")) {
            assertThat(CaptureValues.channels(capture))
                    .containsExactly("counter_tb.out", "clock", "enable", "reset", "counter_tb.top.out");
            assertThat(instantsOfChange(capture, "counter_tb.out"))
                    .containsExactly(6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 24.0);
            assertThat(instantsOfChange(capture, "enable")).containsExactly(5.0, 25.0);
            assertThat(instantsOfChange(capture, "reset")).containsExactly(3.0);
            assertThat(CaptureValues.valuesOf(capture, 0)).contains(0, 1, 2, 3);
            double[] seconds = CaptureValues.secondsOf(capture);
            assertThat(seconds[0]).isEqualTo(2);
            assertThat(seconds[seconds.length - 1]).isEqualTo(26);
        }
    }

    private static List<Double> instantsOfChange(Capture capture, String name) throws IOException {
        int channel = CaptureValues.channels(capture).indexOf(name);
        double[] values = CaptureValues.valuesOf(capture, channel);
        double[] seconds = CaptureValues.secondsOf(capture);
        List<Double> instants = new ArrayList<>();
        for (int i = 1; i < values.length; i++) {
            if (values[i] != values[i - 1]) {
                assertThat(seconds[i]).isEqualTo(seconds[i - 1]);
                instants.add(seconds[i]);
            }
        }
        return instants;
    }

    private static Capture open(String name) throws UnreadableException, IOException {
        Optional<Path> data = SharedData.folder("vcd");
        assumeTrue(data.isPresent(), "../shared/data/vcd is absent: " + name + " is not checked");
        return Captures.open(List.of(data.get().resolve(name)), ReadSettings.none(), Progress.NONE);
    }
}
