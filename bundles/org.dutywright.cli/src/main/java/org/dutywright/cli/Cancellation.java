// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The user's wish to stop, and the way to wait until the run has cleaned up behind itself. SIGINT and SIGTERM start
 * the shutdown of the Java machine; its hook asks the run to stop, waits for it, and leaves with the run's status.
 */
final class Cancellation {
    // A run asks for cancelling every few thousand samples; this is for one that hangs in the operating system.
    private static final long PATIENCE_SECONDS = 20;

    private final CountDownLatch finished = new CountDownLatch(1);
    private final AtomicInteger status = new AtomicInteger(ExitStatus.CANCELLED);
    private volatile boolean asked;

    /** Lets signals of the operating system ask for cancelling. */
    static Cancellation bySignals() {
        Cancellation cancellation = new Cancellation();
        Runtime.getRuntime().addShutdownHook(new Thread(cancellation::shutDown, "cancel"));
        return cancellation;
    }

    boolean isAsked() {
        return asked;
    }

    void ask() {
        asked = true;
    }

    /** Says that the run is over and with what status. */
    void finish(int runStatus) {
        status.set(runStatus);
        finished.countDown();
    }

    // After a signal the status would be 128 plus its number, whatever the run came to; hence halt(). A run that is
    // over has left by exit() with its status already.
    private void shutDown() {
        if (finished.getCount() == 0) {
            return;
        }
        ask();
        try {
            if (!finished.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                Runtime.getRuntime().halt(ExitStatus.CANCELLED);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Runtime.getRuntime().halt(status.get());
    }
}
