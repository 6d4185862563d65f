// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dutywright.capture.Capture;
import org.dutywright.capture.Overview;
import org.dutywright.pulse.CaptureMeasurement;
import org.dutywright.pulse.ChannelPlan;

/** What is known of a capture at one moment. */
record Known(
        SessionState state,
        Optional<Capture> capture,
        List<Overview> overviews,
        Map<String, ChannelPlan> plans,
        Optional<CaptureMeasurement> measurement) {

    static Known nothing() {
        return new Known(
                SessionState.of(SessionState.Phase.OPENING), Optional.empty(), List.of(), Map.of(), Optional.empty());
    }

    Known with(SessionState next) {
        return new Known(next, capture, overviews, plans, measurement);
    }

    Known opened(Capture opened) {
        return new Known(state, Optional.of(opened), overviews, plans, measurement);
    }

    Known summedUp(Overview next) {
        List<Overview> more = new ArrayList<>(overviews);
        more.add(next);
        return new Known(state, capture, List.copyOf(more), plans, measurement);
    }

    Known measuring(Map<String, ChannelPlan> used) {
        return new Known(
                SessionState.of(SessionState.Phase.MEASURING), capture, overviews, Map.copyOf(used), Optional.empty());
    }

    Known measured(CaptureMeasurement made) {
        return new Known(state, capture, overviews, plans, Optional.of(made));
    }
}
