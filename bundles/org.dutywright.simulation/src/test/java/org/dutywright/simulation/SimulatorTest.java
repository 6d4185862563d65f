// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.CannotCreateException;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Gap;
import org.dutywright.capture.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SimulatorTest {

    @TempDir
    Path folder;

    private static Recording recording(
            double start, Optional<Quantisation> steps, List<Recording.Pause> pauses, Recording.Format format) {
        return new Recording(Scenes.RATE_HZ, start, 0.02, steps, pauses, format);
    }

    private List<String> lines(Recording recording) throws IOException {
        Path csv = folder.resolve("capture.csv");
        List<ChannelModel> channels =
                List.of(Scenes.channel("signal1", true, 25), Scenes.channel("signal2", false, 60));
        Simulator.write(Scenes.scenario(recording, channels), csv, Progress.NONE);
        String text = Files.readString(csv);
        assertThat(text).endsWith("\n").doesNotContain("\r");
        return text.lines().toList();
    }

    @Test
    void aCaptureHasAHeadingWithUnitsAndOneLineASample() throws IOException {
        List<String> lines = lines(recording(0, Optional.empty(), List.of(), Recording.Format.standard()));
        assertThat(lines).hasSize(2001);
        assertThat(lines.get(0)).isEqualTo("time (s),signal1 (V),signal2 (V)");
        // A cycle starts with the recording: both edges are half way.
        assertThat(lines.get(1)).isEqualTo("0.00000,6.400000,6.400000");
        assertThat(lines.get(2)).isEqualTo("0.00001,9.400000,3.400000");
        assertThat(lines.get(2000)).isEqualTo("0.01999,3.400000,9.400000");
    }

    @Test
    void valuesCarryTheStepOfTheConverter() throws IOException {
        Recording recording =
                recording(0, Optional.of(Quantisation.ofStep(0.0025)), List.of(), Recording.Format.standard());
        // A hundredth of 2.5 mV is 25 µV: five decimals.
        assertThat(lines(recording).get(2)).isEqualTo("0.00001,9.40000,3.40000");
    }

    @Test
    void unitsDecimalsAndTheTimeColumnMayBeChosen() throws IOException {
        Recording.Format format = new Recording.Format(true, "ms", "mV", OptionalInt.of(1));
        List<String> lines = lines(recording(-0.5, Optional.empty(), List.of(), format));
        assertThat(lines.get(0)).isEqualTo("time (ms),signal1 (mV),signal2 (mV)");
        assertThat(lines.get(1)).isEqualTo("-500.00,6400.0,6400.0");
        Recording.Format bare = new Recording.Format(false, "s", "V", OptionalInt.of(2));
        List<String> without = lines(recording(0, Optional.empty(), List.of(), bare));
        assertThat(without.get(0)).isEqualTo("signal1 (V),signal2 (V)");
        assertThat(without.get(1)).isEqualTo("6.40,6.40");
    }

    @Test
    void aPauseLeavesLinesOutAndTheSignalRunsOn() throws IOException {
        List<Recording.Pause> pauses = List.of(new Recording.Pause(0.003, 0.01001));
        List<String> lines = lines(recording(0, Optional.empty(), pauses, Recording.Format.standard()));
        assertThat(lines).hasSize(2001 - 701);
        assertThat(lines.get(300)).startsWith("0.00299,");
        assertThat(lines.get(301)).isEqualTo("0.01001,9.400000,3.400000");
    }

    @Test
    void aCaptureWithoutAFileHasTheSameSamplesAndItsGap() throws IOException {
        List<Recording.Pause> pauses = List.of(new Recording.Pause(0.003, 0.01001));
        Scenario scenario = Scenes.scenario(
                recording(-1, Optional.empty(), List.of(), Recording.Format.standard()),
                List.of(Scenes.channel("signal1", true, 25)));
        Scenario paused = Scenes.scenario(
                recording(0, Optional.empty(), pauses, Recording.Format.standard()),
                List.of(Scenes.channel("signal1", true, 25)));
        try (Capture capture = Simulator.capture(scenario);
                Capture gap = Simulator.capture(paused)) {
            assertThat(capture.sampleCount()).isEqualTo(2000);
            assertThat(capture.timeBase().secondsAt(1)).isCloseTo(-0.99999, within(1e-15));
            assertThat(gap.timeBase().gaps()).containsExactly(new Gap(0.00299, 0.01001));
            double[] one = new double[1];
            gap.samples().read(0, 300, one, 0, 1);
            assertThat(one[0]).isCloseTo(9.4, within(1e-9));
        }
    }

    @Test
    void aCancelledSimulationLeavesNothingBehind() throws IOException {
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
        Path csv = folder.resolve("capture.csv");
        assertThatThrownBy(() -> Simulator.write(Scenes.oneSecond(), csv, cancelled))
                .isInstanceOf(CancelledException.class);
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void progressAddsUpToTheSamples() throws IOException {
        long[] sums = new long[2];
        Progress counting = new Progress() {
            @Override
            public void begin(String task, long totalWork) {
                sums[0] = totalWork;
            }

            @Override
            public void worked(long work) {
                sums[1] += work;
            }

            @Override
            public boolean isCancelled() {
                return false;
            }
        };
        Simulator.write(Scenes.oneSecond(), folder.resolve("capture.csv"), counting);
        assertThat(sums).containsExactly(100_000, 100_000);
    }

    @Test
    void aTruthThatCannotBeWrittenLeavesNoCapture() throws IOException {
        Path csv = folder.resolve("capture.csv");
        Files.createDirectory(Simulator.truthFile(csv));
        assertThatThrownBy(() -> Simulator.write(Scenes.oneSecond(), csv, Progress.NONE))
                .isInstanceOf(CannotCreateException.class)
                .hasMessageContaining("capture.csv.truth.json");
        assertThat(csv).doesNotExist();
    }
}
