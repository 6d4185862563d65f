// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import org.dutywright.capture.CancelledException;
import org.dutywright.capture.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkersTest {
    /** Knows which threads talked to it, and wants to stop after some work. */
    private static final class Watched implements Progress {
        private final Set<Thread> threads = ConcurrentHashMap.newKeySet();
        private final long most;
        private long done;

        Watched(long most) {
            this.most = most;
        }

        @Override
        public void begin(String task, long totalWork) {
            throw new AssertionError("a task began");
        }

        @Override
        public void worked(long work) {
            threads.add(Thread.currentThread());
            done += work;
        }

        @Override
        public boolean isCancelled() {
            threads.add(Thread.currentThread());
            return done >= most;
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 16})
    void eachChannelIsWorkedOnOnceAndOnlyTheOneWhoAskedHearsOfIt(int threads) throws IOException {
        Watched progress = new Watched(Long.MAX_VALUE);
        int[] times = new int[7];
        new Workers(threads, progress).each(times.length, (i, part) -> {
            times[i]++;
            part.checkCancelled();
            part.worked(10L + i);
        });
        assertThat(times).containsOnly(1);
        assertThat(progress.done).isEqualTo(7 * 10 + 21);
        assertThat(progress.threads).containsExactly(Thread.currentThread());
    }

    @Test
    void twoChannelsAreWorkedOnAtOnce() throws IOException {
        CountDownLatch both = new CountDownLatch(2);
        new Workers(2, Progress.NONE).each(2, (i, part) -> {
            both.countDown();
            // ends only when the other one has begun
            while (both.getCount() > 0) {
                Thread.onSpinWait();
            }
        });
        assertThat(both.getCount()).isZero();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void theFailureOfAChannelIsThrownAsItIsAndStopsTheOthers(int threads) {
        assertThatThrownBy(() -> new Workers(threads, Progress.NONE).each(3, (i, part) -> {
                    if (i == 1) {
                        throw new IOException("disk full");
                    }
                    while (threads > 1) {
                        part.checkCancelled();
                    }
                }))
                .isExactlyInstanceOf(IOException.class)
                .hasMessage("disk full");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aWishToStopReachesAllWorkers(int threads) {
        assertThatThrownBy(() -> new Workers(threads, new Watched(1000)).each(4, (i, part) -> {
                    while (true) {
                        part.worked(1);
                        part.checkCancelled();
                    }
                }))
                .isExactlyInstanceOf(CancelledException.class);
    }
}
