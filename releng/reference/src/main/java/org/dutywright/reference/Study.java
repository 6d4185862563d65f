// SPDX-License-Identifier: EPL-2.0
package org.dutywright.reference;

import java.io.IOException;

/**
 * Something that was found out by measuring many simulated captures, and that anybody can find out again: all randomness
 * has a fixed seed, so that every run writes the same page.
 */
public interface Study {
    /** Short name: the argument of the script and the name of the page. */
    String name();

    /** What it shows, one line. */
    String title();

    /**
     * Runs it.
     *
     * @param share of its cases, 1 for all of them
     * @param page gets what was found
     * @throws IOException if a capture cannot be measured
     */
    void run(double share, Page page) throws IOException;
}
