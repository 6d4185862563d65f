// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

import java.io.IOException;
import java.util.List;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Gap;
import org.dutywright.pulse.Fitness;
import org.dutywright.pulse.Fitness.Grade;
import org.dutywright.pulse.internal.Words;

/**
 * {@code capture.gaps}: a gap is no fault of the signal; the recording is poor only where more is missing than there.
 */
final class Gaps {
    private static final String ITEM = "capture.gaps";

    private Gaps() {}

    static Fitness judge(Capture capture) throws IOException {
        List<Gap> gaps = capture.timeBase().gaps();
        if (gaps.isEmpty()) {
            return new Fitness(ITEM, Grade.GOOD, "no gap in the time stamps");
        }
        double missing = 0;
        for (Gap gap : gaps) {
            missing += gap.endSeconds() - gap.startSeconds();
        }
        double recorded = capture.sampleCount() * capture.timeBase().stepSeconds();
        boolean poor = missing > recorded;
        return new Fitness(
                ITEM,
                poor ? Grade.POOR : Grade.GOOD,
                Words.of(
                        "%d %s, %s in all; no cycle and no event spans them%s",
                        gaps.size(),
                        gaps.size() == 1 ? "gap" : "gaps",
                        Words.seconds(missing),
                        poor ? "; record without pauses" : ""));
    }
}
