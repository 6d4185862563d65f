// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.util.List;
import org.dutywright.workbench.capture.view.Lane;
import org.dutywright.workbench.capture.view.TimeView;
import org.dutywright.workbench.capture.view.Traces;

/**
 * What a plot shows.
 *
 * @param traces where drawings and readings come from
 * @param whole the view of the whole capture
 * @param lanes one for each channel
 */
record PlotModel(Traces traces, TimeView whole, List<Lane> lanes) {
    PlotModel {
        lanes = List.copyOf(lanes);
    }

    /** The lane of the channel of that name, -1 where there is none. */
    int indexOf(String channel) {
        for (int i = 0; i < lanes.size(); i++) {
            if (lanes.get(i).name().equals(channel)) {
                return i;
            }
        }
        return -1;
    }
}
