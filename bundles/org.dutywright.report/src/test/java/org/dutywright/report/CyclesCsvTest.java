// SPDX-License-Identifier: EPL-2.0
package org.dutywright.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.LongStream;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Progress;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.Cycle;
import org.junit.jupiter.api.Test;

final class CyclesCsvTest {
    private static String text(CaptureMeasurement measurement) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CyclesCsv.write(measurement, out, Progress.NONE);
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void eachCycleIsARowWithTheColumnsOfTheContract() throws IOException {
        // frequency = 1 / period, duty = 100 x pulse duration / period, in double arithmetic
        assertThat(text(Examples.measurement()))
                .isEqualTo(String.join(
                        "\r\n",
                        "channel,index,start_s,period_s,frequency_hz,pulse_duration_s,duty_percent,mean_v,disturbed",
                        "signal1,0,-0.0999,0.005,200.0,5.0E-4,10.0,1.58,false",
                        "signal1,1,-0.0949,0.01,100.0,5.0E-4,5.0,0.97,true",
                        "signal1,2,0.41,0.30000000000000004," + 1 / (0.1 + 0.2) + ",0.1," + 100 * 0.1 / (0.1 + 0.2)
                                + ",1.6,false",
                        ""));
    }

    @Test
    void numbersReadBackAsTheSameDoubles() throws IOException {
        String lastRow = text(Examples.measurement()).lines().toList().get(3);
        String period = List.of(lastRow.split(",", -1)).get(3);
        assertThat(Double.parseDouble(period)).isEqualTo(0.1 + 0.2);
    }

    @Test
    void aNameWithACommaIsQuoted() throws IOException {
        assertThat(text(named("pedal, \"upper\""))).contains("\r\n\"pedal, \"\"upper\"\"\",0,");
    }

    @Test
    void aCancelledRunStops() {
        Progress cancelled = new Progress() {
            @Override
            public void begin(String task, long totalWork) {}

            @Override
            public void worked(long work) {}

            @Override
            public boolean isCancelled() {
                return true;
            }
        };
        assertThatThrownBy(() -> CyclesCsv.write(named("signal1"), new ByteArrayOutputStream(), cancelled))
                .isInstanceOf(CancelledException.class);
    }

    private static CaptureMeasurement named(String name) {
        List<Cycle> cycles = LongStream.range(0, 10_000)
                .mapToObj(i -> new Cycle(i, i * 0.005, 0.005, 0.001, 2, false))
                .toList();
        return Examples.measurement(List.of(Examples.withCycles(name, cycles)));
    }
}
