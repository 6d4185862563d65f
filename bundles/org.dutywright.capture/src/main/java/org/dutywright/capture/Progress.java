// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

/**
 * Where long work reports how far it is and asks whether it should stop. One owner a task: whoever calls
 * {@link #begin} reports the work of that task and nobody else does.
 */
public interface Progress {
    /** Reports nothing and is never cancelled. */
    Progress NONE = new Progress() {
        @Override
        public void begin(String task, long totalWork) {}

        @Override
        public void worked(long work) {}

        @Override
        public boolean isCancelled() {
            return false;
        }
    };

    /**
     * Starts a task; a new call ends the one before.
     *
     * @param task what is done, in words for the user
     * @param totalWork the amount of work that {@link #worked} will add up to, or 0 where it is unknown
     */
    void begin(String task, long totalWork);

    /** Adds work done since the last call, in the units of {@link #begin}. */
    void worked(long work);

    /** Whether the user asked to stop. */
    boolean isCancelled();

    /**
     * To be called at least every few thousand samples.
     *
     * @throws CancelledException if the user asked to stop
     */
    default void checkCancelled() {
        if (isCancelled()) {
            throw new CancelledException();
        }
    }
}
