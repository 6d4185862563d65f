// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal.fitness;

/**
 * Whether noise of more than one code can be seen in a recording. Looked at are groups of eight neighbouring samples of one
 * state, none of them at the extreme value of the recording. A group is noisy if it turns back at least twice and covers
 * more than two neighbouring codes: what is left of a transition does not turn back, and a level between two codes covers
 * two.
 */
final class VisibleNoise {
    private static final int GROUP = 8;
    private static final int LEAST_TURNS = 2;
    private static final double LEAST_CODES = 1.5;
    private static final int LEAST_GROUPS = 8;
    private static final double LEAST_SHARE = 0.15;

    private final StateZones zones;
    private long groups;
    private long noisy;

    private VisibleNoise(StateZones zones) {
        this.zones = zones;
    }

    static VisibleNoise in(SampleWindows windows, StateZones zones) {
        VisibleNoise noise = new VisibleNoise(zones);
        for (int window = 0; window < windows.count(); window++) {
            int to = windows.to(window);
            int i = windows.from(window);
            while (i + GROUP <= to) {
                int inside = noise.groupAt(windows.values(), i);
                // on from the sample that does not belong to it
                i += Math.max(1, inside);
            }
        }
        return noise;
    }

    /** Looks at a group; number of its samples that belong to it, all of them if it counts. */
    private int groupAt(double[] values, int from) {
        int zone = zones.zone(values[from]);
        if (zone == 0) {
            return 0;
        }
        double min = values[from];
        double max = values[from];
        for (int i = from; i < from + GROUP; i++) {
            if (zones.zone(values[i]) != zone || zones.isExtreme(values[i], zone)) {
                return i - from;
            }
            min = Math.min(min, values[i]);
            max = Math.max(max, values[i]);
        }
        int turns = 0;
        for (int i = from + 2; i < from + GROUP; i++) {
            turns += (values[i] - values[i - 1]) * (values[i - 1] - values[i - 2]) < 0 ? 1 : 0;
        }
        groups++;
        noisy += turns >= LEAST_TURNS && max - min > LEAST_CODES * zones.codeStep() ? 1 : 0;
        return GROUP;
    }

    boolean isVisible() {
        return groups >= LEAST_GROUPS && noisy >= LEAST_SHARE * groups;
    }
}
