// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Progress;

/**
 * Works on several channels at once. The thread that asked waits, and is the only one that talks to its progress: whoever
 * made that need not think of threads. What channels do to each other's results is up to the caller: here nothing is shared.
 */
final class Workers {
    /** How often the work done is passed on, and how late a wish to stop is heard. */
    private static final long PERIOD_MILLIS = 50;

    private final int threads;
    private final Progress progress;

    /**
     * Workers.
     *
     * @param threads how many may work at once; with 1 the thread that asks works itself
     * @param progress of the one who asks
     */
    Workers(int threads, Progress progress) {
        this.threads = threads;
        this.progress = progress;
    }

    /** Work on one channel. */
    interface Work {
        /**
         * Does it.
         *
         * @param index of the channel
         * @param progress to be told of it
         */
        void on(int index, Progress progress) throws IOException;
    }

    /**
     * Does some work for each channel, and returns when all of it is done.
     *
     * @param count number of channels
     * @throws IOException that of the first channel, in their order, that failed; the others have been stopped by then
     * @throws CancelledException if the user asked to stop, or the thread was interrupted
     */
    void each(int count, Work work) throws IOException {
        if (Math.min(threads, count) < 2) {
            for (int i = 0; i < count; i++) {
                work.on(i, progress);
            }
            return;
        }
        Relay relay = new Relay();
        List<Future<?>> parts = new ArrayList<>();
        try (ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, count), Workers::thread)) {
            try {
                for (int i = 0; i < count; i++) {
                    int index = i;
                    parts.add(pool.submit(() -> {
                        relay.run(index, work);
                        return null;
                    }));
                }
                await(parts, relay);
            } finally {
                // whatever ends the waiting: closing the pool waits for the work
                relay.stop();
            }
        }
        relay.passOn(progress);
        throwFirst(parts);
        progress.checkCancelled();
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "dutywright-measuring");
        thread.setDaemon(true);
        return thread;
    }

    private void await(List<Future<?>> parts, Relay relay) {
        for (Future<?> part : parts) {
            while (!isDone(part)) {
                relay.passOn(progress);
                if (progress.isCancelled()) {
                    relay.stop();
                }
            }
        }
    }

    private static boolean isDone(Future<?> part) {
        try {
            part.get(PERIOD_MILLIS, TimeUnit.MILLISECONDS);
            return true;
        } catch (TimeoutException e) {
            return false;
        } catch (ExecutionException e) {
            // thrown once all have ended
            return true;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancelledException();
        }
    }

    /** Of those that failed, the first that was not only told to stop. */
    private static void throwFirst(List<Future<?>> parts) throws IOException {
        Optional<Throwable> first = Optional.empty();
        for (Future<?> part : parts) {
            if (part.state() == Future.State.FAILED) {
                Throwable failure = part.exceptionNow();
                if (first.isEmpty() || (stopped(first.get()) && !stopped(failure))) {
                    first = Optional.of(failure);
                }
            }
        }
        if (first.isEmpty()) {
            return;
        }
        switch (first.get()) {
            case IOException e -> throw e;
            case RuntimeException e -> throw e;
            case Error e -> throw e;
            default -> throw new IllegalStateException(first.get());
        }
    }

    private static boolean stopped(Throwable failure) {
        return failure instanceof CancelledException;
    }

    /** Between the workers and the progress of the one who asked. */
    private static final class Relay implements Progress {
        private final AtomicLong done = new AtomicLong();
        private volatile boolean stopped;

        void run(int index, Work work) throws IOException {
            checkCancelled();
            try {
                work.on(index, this);
            } catch (IOException | RuntimeException | Error e) {
                stop();
                throw e;
            }
        }

        void stop() {
            stopped = true;
        }

        void passOn(Progress progress) {
            long work = done.getAndSet(0);
            if (work > 0) {
                progress.worked(work);
            }
        }

        @Override
        public void begin(String task, long totalWork) {
            throw new UnsupportedOperationException("the task has begun");
        }

        @Override
        public void worked(long work) {
            done.addAndGet(work);
        }

        @Override
        public boolean isCancelled() {
            return stopped;
        }
    }
}
