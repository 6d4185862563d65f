// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SampleBlocksTest {
    // segments of 5, 1 and 4 samples
    private static final List<Segment> SEGMENTS =
            List.of(new Segment(0, 5, -1.0), new Segment(5, 1, 3.0), new Segment(6, 4, 7.0));

    private static Capture counting(List<Segment> segments) {
        return Captures.ofArrays(List.of("signal1", "signal2"), List.of("V", "V"), 10.0, segments, ramp(0), ramp(100));
    }

    private static double[] ramp(int start) {
        double[] values = new double[10];
        for (int i = 0; i < values.length; i++) {
            values[i] = start + i;
        }
        return values;
    }

    @Test
    void blocksEndAtTheirCapacityAndAtGaps() throws IOException {
        List<String> seen = new ArrayList<>();
        SampleBlocks blocks = SampleBlocks.of(counting(SEGMENTS), 1, 3);
        while (blocks.next()) {
            seen.add(blocks.firstSample() + "+" + blocks.count() + (blocks.segmentStart() ? " start" : "")
                    + (blocks.segmentEnd() ? " end" : "") + " " + blocks.values()[0]);
        }
        assertThat(seen)
                .containsExactly(
                        "0+3 start 100.0", "3+2 end 103.0", "5+1 start end 105.0", "6+3 start 106.0", "9+1 end 109.0");
        assertThat(blocks.next()).isFalse();
    }

    @Test
    void instantsOfAnEvenBaseCountFromTheStartOfTheSegment() throws IOException {
        Capture capture = counting(SEGMENTS);
        SampleBlocks blocks = SampleBlocks.of(capture, 0, 2);
        while (blocks.next()) {
            for (int i = 0; i < blocks.count(); i++) {
                // the same quotient is computed, so the same double must come out
                assertThat(blocks.secondsAt(i)).isEqualTo(capture.timeBase().secondsAt(blocks.firstSample() + i));
            }
        }
        // closed form: third segment starts at 7 s, its fourth sample is 3 / 10 Hz later
        assertThat(capture.timeBase().secondsAt(9)).isEqualTo(7.3);
        assertThat(capture.timeBase().gaps()).containsExactly(new Gap(-0.6, 3.0), new Gap(3.0, 7.0));
    }

    @Test
    void instantsOfAStampedBaseAreTheStamps() throws IOException {
        double[] seconds = {0, 0.1, 0.1, 4};
        Capture capture =
                Captures.ofStampedArrays(List.of("signal1"), List.of("V"), seconds, new double[] {1, 2, 3, 4});
        SampleBlocks blocks = SampleBlocks.of(capture, 0);
        assertThat(blocks.next()).isTrue();
        for (int i = 0; i < seconds.length; i++) {
            assertThat(blocks.secondsAt(i)).isEqualTo(seconds[i]);
        }
        assertThat(capture.timeBase().sampleRateHz()).isEmpty();
        assertThat(capture.timeBase().stepSeconds()).isEqualTo(0.1);
    }

    @Test
    void anEvenBaseReadsAcrossSegments() {
        EvenTimeBase base = EvenTimeBase.of(10.0, SEGMENTS);
        double[] seconds = new double[12];
        base.readSeconds(3, seconds, 1, 6);
        double[] expected = new double[12];
        for (int i = 0; i < 6; i++) {
            expected[1 + i] = base.secondsAt(3 + i);
        }
        assertThat(seconds).isEqualTo(expected);
        assertThatThrownBy(() -> base.readSeconds(5, seconds, 0, 6)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> base.secondsAt(10)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void segmentsThatDoNotFollowEachOtherAreRefused() {
        assertThatThrownBy(() -> EvenTimeBase.of(10, List.of(new Segment(1, 9, 0))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> EvenTimeBase.of(0, 0, 5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> counting(List.of(new Segment(0, 9, 0)))).isInstanceOf(IllegalArgumentException.class);
    }
}
