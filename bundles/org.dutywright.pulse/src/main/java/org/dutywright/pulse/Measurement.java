// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.List;

/**
 * Measures something on the cycles of one PWM channel. Found as a Java service ({@code META-INF/services}); the
 * built-in measurements use this interface and nothing else. Implementations are stateless, because
 * several channels may be measured at once; each gets a {@link Run} of its own, used by one thread.
 */
public interface Measurement {
    /** Short unique name, letters, digits and dashes. */
    String id();

    /** What it measures, in words for the user. */
    String title();

    /** Starts measuring one channel. */
    Run start(ChannelContext channel);

    /**
     * The measurement of one channel. Gets each transition and each cycle once, in time order: a transition
     * before the cycle that it begins or lies in. Memory must not grow with the number of calls.
     */
    interface Run {
        /**
         * Takes a transition.
         *
         * @param disturbed whether it belongs to a disturbed cycle or to none
         */
        default void transition(Transition transition, boolean disturbed) {}

        /** Takes a whole cycle, disturbed ones included. */
        void cycle(Cycle cycle);

        /**
         * Takes a whole cycle with what its samples show. Who needs no more than the cycle leaves this as it is.
         *
         * @param shape belongs to the cycle
         */
        default void cycle(Cycle cycle, CycleShape shape) {
            cycle(cycle);
        }

        /** The results, the same ids on every call and for every channel. */
        List<Result> finish();
    }
}
