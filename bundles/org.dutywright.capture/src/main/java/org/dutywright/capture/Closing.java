// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.util.List;

/** Closes several things even if one of them fails. */
final class Closing {
    private Closing() {}

    static void all(Samples first, List<? extends Samples> others) throws IOException {
        try (first) {
            if (!others.isEmpty()) {
                all(others.get(0), others.subList(1, others.size()));
            }
        }
    }
}
