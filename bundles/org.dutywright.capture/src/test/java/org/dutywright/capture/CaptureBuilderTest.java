// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.LongToDoubleFunction;
import org.junit.jupiter.api.Test;

class CaptureBuilderTest {
    private static final Source SOURCE = new Source(Path.of("pedal.csv"), "0".repeat(64));
    private static final List<Channel> ONE = List.of(new Channel("signal1", "V"));

    private static Capture stamped(double resolutionSeconds, int count, LongToDoubleFunction seconds)
            throws IOException, UnreadableException {
        try (CaptureBuilder builder = CaptureBuilder.stamped(ONE)) {
            for (int i = 0; i < count; i++) {
                builder.append(seconds.applyAsDouble(i), new double[] {i});
            }
            builder.stampResolution(resolutionSeconds);
            return builder.finish(SOURCE, Map.of(), Progress.NONE);
        }
    }

    private static double rounded(double seconds, double resolutionSeconds) {
        return Math.round(seconds / resolutionSeconds) * resolutionSeconds;
    }

    @Test
    void stampsThatAccumulateRoundingErrorsGiveTheRateThatWasMeant() throws Exception {
        double[] sum = {-0.5};
        Capture capture = stamped(0, 200_000, i -> i == 0 ? sum[0] : (sum[0] += 1e-5));
        assertThat(capture.timeBase().sampleRateHz()).hasValue(100_000);
        assertThat(capture.timeBase().segments()).containsExactly(new Segment(0, 200_000, -0.5));
    }

    @Test
    void aStepThatIsShortAsAStepIsTaken() throws Exception {
        Capture capture = stamped(1e-7, 50_000, i -> rounded(i * 3e-6, 1e-7));
        assertThat(capture.timeBase().stepSeconds()).isEqualTo(3e-6);
    }

    @Test
    void stampsPrintedTooCoarselyAreEvenWithTheStepFromTheEnds() throws Exception {
        // 100 kHz printed to 0.1 ms: ten rows share each stamp
        Capture capture = stamped(1e-4, 100_000, i -> rounded(i * 1e-5, 1e-4));
        assertThat(capture.timeBase().sampleRateHz()).hasValue(100_000);
        assertThat(capture.timeBase().segments()).hasSize(1);
        assertThat(capture.guessed()).containsKey("time stamps");
    }

    @Test
    void stampsPrintedInWholeStepsAreNotCalledTooCoarse() throws Exception {
        Capture capture = stamped(1e-5, 100_000, i -> rounded(i * 1e-5, 1e-5));
        assertThat(capture.timeBase().sampleRateHz()).hasValue(100_000);
        assertThat(capture.guessed()).doesNotContainKey("time stamps");
    }

    @Test
    void aRateThatDoesNotFitThePrintedDigitsIsStillEven() throws Exception {
        // 44.1 kHz printed to 10 us: steps of 2 or 3 units, none of 2.27
        Capture capture = stamped(1e-5, 100_000, i -> rounded(i / 44_100.0, 1e-5));
        assertThat(capture.timeBase().sampleRateHz()).hasValue(44_100);
        assertThat(capture.timeBase().segments()).hasSize(1);
    }

    @Test
    void gapsAreWhereRowsLieMoreThanOneAndAHalfStepsApart() throws Exception {
        Capture capture = stamped(1e-6, 1000, i -> (i < 400 ? i : i < 401 ? i + 1 : i + 50_000) * 1e-3);
        assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
        assertThat(capture.timeBase().segments())
                .containsExactly(new Segment(0, 400, 0), new Segment(400, 1, 0.401), new Segment(401, 599, 50.401));
        assertThat(capture.guessed()).containsEntry("gaps", "2, where rows lie more than 1.5 steps apart");
    }

    @Test
    void unevenRowsKeepTheirStamps() throws Exception {
        Random random = new Random(7);
        double[] seconds = new double[3000];
        for (int i = 1; i < seconds.length; i++) {
            seconds[i] = seconds[i - 1] + 1e-3 * (0.7 + 0.6 * random.nextDouble()) + (i == 1500 ? 1 : 0);
        }
        Capture capture = stamped(1e-9, seconds.length, i -> seconds[(int) i]);
        TimeBase base = capture.timeBase();
        assertThat(base.sampleRateHz()).isEmpty();
        // the median of steps that are uniform in 0.7 to 1.3 ms; its standard error with 3000 of them is 0.0055 ms
        assertThat(base.stepSeconds()).isCloseTo(1e-3, within(3e-5));
        // resolution of 1 ns as a rectangular distribution (JCGM 100, 4.3.7)
        assertThat(base.stampUncertaintySeconds()).isCloseTo(1e-9 / Math.sqrt(12), within(1e-18));
        assertThat(base.segments()).hasSize(2);
        double[] read = new double[seconds.length];
        base.readSeconds(0, read, 0, read.length);
        assertThat(read).isEqualTo(seconds);
        capture.close();
        assertThatThrownBy(() -> base.secondsAt(3)).isInstanceOf(IOException.class);
    }

    @Test
    void recordingsOfChangesOnlyHaveNoGaps() throws Exception {
        // two rows an edge, 1 us apart, edges every 2.5 ms
        Capture capture = stamped(1e-9, 2000, i -> Math.floorDiv(i, 2L) * 2.5e-3 + (i % 2) * 1e-6);
        assertThat(capture.timeBase().sampleRateHz()).isEmpty();
        assertThat(capture.timeBase().segments()).hasSize(1);
    }

    @Test
    void stampsThatAreNotEvenlySpacedByMoreThanTwoPercentOfAStepAreUneven() throws Exception {
        Capture within = stamped(1e-9, 1000, i -> i * 1e-3 + (i % 2) * 3.8e-5);
        assertThat(within.timeBase().sampleRateHz()).isPresent();
        Capture beyond = stamped(1e-9, 1000, i -> i * 1e-3 + (i % 2) * 4.2e-5);
        assertThat(beyond.timeBase().sampleRateHz()).isEmpty();
    }

    @Test
    void randomStampsMakeNoEndlessListOfGaps() throws Exception {
        Random random = new Random(11);
        double[] at = {0};
        Capture capture = stamped(0, 300_000, i -> at[0] += Math.exp(20 * random.nextDouble()));
        assertThat(capture.timeBase().segments()).hasSize(1);
        assertThat(capture.timeBase().sampleRateHz()).isEmpty();
    }

    @Test
    void aRowLeftOutIsAGapWhateverTheTimeBase() throws Exception {
        for (boolean withStamps : new boolean[] {true, false}) {
            try (CaptureBuilder builder =
                    withStamps ? CaptureBuilder.stamped(ONE) : CaptureBuilder.even(ONE, 0, 1000)) {
                for (int i = 0; i < 100; i++) {
                    if (i == 0 || i == 40 || i == 41 || i == 99) {
                        builder.leaveOut();
                    } else if (withStamps) {
                        builder.append(i * 1e-3, new double[] {i});
                    } else {
                        builder.append(new double[] {i});
                    }
                }
                assertThat(builder.leftOutCount()).isEqualTo(4);
                Capture capture = builder.finish(SOURCE, Map.of(), Progress.NONE);
                assertThat(capture.timeBase().segments())
                        .containsExactly(new Segment(0, 39, 0.001), new Segment(39, 57, 0.042));
                assertThat(capture.timeBase().sampleRateHz()).hasValue(1000);
            }
        }
    }

    @Test
    void tooManyGapsWithoutStampsAreRefused() throws Exception {
        try (CaptureBuilder builder = CaptureBuilder.even(ONE, 0, 1000)) {
            for (int i = 0; i < 150_000; i++) {
                builder.append(new double[] {1});
                builder.leaveOut();
            }
            assertThatThrownBy(() -> builder.finish(SOURCE, Map.of(), Progress.NONE))
                    .isInstanceOf(UnreadableException.class)
                    .hasMessageContaining("150000");
        }
    }

    @Test
    void tooFewRowsOrTimeThatStandsStillIsRefused() {
        assertThatThrownBy(() -> stamped(0, 1, i -> i))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("one row");
        assertThatThrownBy(() -> stamped(1, 10, i -> 5))
                .isInstanceOf(UnreadableException.class)
                .hasMessageContaining("the same time stamp");
    }

    @Test
    void cancellingIsHeardWhileTheStampsAreJudged() {
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
        assertThatThrownBy(() -> {
                    try (CaptureBuilder builder = CaptureBuilder.stamped(ONE, 0)) {
                        builder.append(0, new double[] {1});
                        builder.append(1, new double[] {1});
                        builder.finish(SOURCE, Map.of(), cancelled);
                    }
                })
                .isInstanceOf(CancelledException.class);
    }

    @Test
    void exactStampsStayAsTheyAreAndOnlyRowsLeftOutMakeGaps() throws Exception {
        try (CaptureBuilder builder = CaptureBuilder.stamped(ONE)) {
            double[] seconds = {0, 1, 1, 2, 2, 500, 500};
            for (int i = 0; i < seconds.length; i++) {
                if (i == 3) {
                    builder.leaveOut();
                }
                builder.append(seconds[i], new double[] {i});
            }
            builder.exactStamps(0.25);
            Capture capture = builder.finish(SOURCE, Map.of(), Progress.NONE);
            assertThat(capture.timeBase().sampleRateHz()).isEmpty();
            assertThat(capture.timeBase().stepSeconds()).isEqualTo(0.25);
            assertThat(capture.timeBase().segments()).containsExactly(new Segment(0, 3, 0), new Segment(3, 4, 2));
            double[] read = new double[seconds.length];
            capture.timeBase().readSeconds(0, read, 0, read.length);
            assertThat(read).containsExactly(seconds);
        }
    }

    /** Found by spoiling files: stamps near the end of the range of floating point made an infinite rate. */
    @Test
    void timesAndRatesThatNoRecorderHasAreRefused() {
        for (double factor : new double[] {1e300, 1e21, 1e-21, 1e-310}) {
            assertThatThrownBy(() -> stamped(0, 100, i -> i * factor))
                    .isInstanceOf(UnreadableException.class)
                    .hasMessageContaining("its time stamps run from 0.0 s to");
        }
        for (double rate : new double[] {1e300, 1e-300, 0}) {
            assertThatThrownBy(() -> {
                        try (CaptureBuilder builder = CaptureBuilder.even(ONE, 0, rate)) {
                            builder.append(new double[] {1});
                            builder.append(new double[] {2});
                            builder.finish(SOURCE, Map.of(), Progress.NONE);
                        }
                    })
                    .isInstanceOf(UnreadableException.class)
                    .hasMessageContaining("has a sample rate of");
        }
    }

    /** Found by spoiling files: the rate of such a step is infinite. */
    @Test
    void stepsNearTheLeastOfFloatingPointAreNoStepsOfAnEvenBase() throws Exception {
        double[] seconds = {-0.5, 0, 1.35e-312, 1.36e-312};
        Capture capture = stamped(0, seconds.length, i -> seconds[(int) i]);
        assertThat(capture.timeBase().sampleRateHz()).isEmpty();
        assertThat(capture.timeBase().stepSeconds()).isGreaterThan(0.1);
    }
}
