// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.signal;

/** Transitions in order of time, made one by one. The first leads into the active level. */
interface EdgeSource {

    /** The next transition; {@link Edge#NEVER} again and again after the last one. */
    Edge next();
}
