// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** With a clock of the test's own. */
final class ProgressLineTest {
    private final ByteArrayOutputStream shown = new ByteArrayOutputStream();
    private final AtomicLong clock = new AtomicLong();
    private final Cancellation cancellation = new Cancellation();
    private final ProgressLine line = new ProgressLine(Run.stream(shown), clock::get, cancellation);

    private String shown() {
        return shown.toString(StandardCharsets.UTF_8);
    }

    @Test
    void shortWorkShowsNothing() {
        line.begin("reading", 100);
        line.worked(100);
        line.clear();
        assertThat(shown()).isEmpty();
    }

    @Test
    void longWorkIsShownInPercentAFewTimesASecond() {
        line.begin("reading", 1000);
        for (int i = 0; i < 1000; i++) {
            clock.addAndGet(TimeUnit.MILLISECONDS.toNanos(1));
            line.worked(1);
        }
        assertThat(shown()).isEqualTo("\rreading 20 %\rreading 40 %\rreading 60 %\rreading 80 %\rreading 100 %");
    }

    @Test
    void aShorterTextCoversALongerOneAndTheLineGoesAway() {
        clock.addAndGet(TimeUnit.SECONDS.toNanos(1));
        line.begin("writing cycles", 0);
        clock.addAndGet(TimeUnit.SECONDS.toNanos(1));
        line.begin("reading", 0);
        line.clear();
        assertThat(shown()).isEqualTo("\rwriting cycles\rreading       \r       \r");
    }

    @Test
    void theWishToStopIsPassedOn() {
        assertThat(line.isCancelled()).isFalse();
        cancellation.ask();
        assertThat(line.isCancelled()).isTrue();
    }
}
