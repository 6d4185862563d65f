// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.eclipse.swt.widgets.Display;

/**
 * Measures how long the window is deaf while it handles one event. While an event takes longer than the limit, another
 * thread notes where the user-interface thread stands, so that a failure names the guilty line.
 */
public final class FreezeWatch implements AutoCloseable {
    /**
     * Far above what a person accepts (a tenth of a second), for a loaded build machine that loads classes for the first
     * time is no measuring bench; what blocks on a file or a long computation still takes longer.
     */
    private static final Duration LIMIT = Duration.ofSeconds(3);

    private static final Duration LOOK_EVERY = Duration.ofMillis(50);
    private static final int STACK_DEPTH = 40;
    /** How many places a complaint names. */
    private static final int SHOWN = 3;

    private static FreezeWatch current = new FreezeWatch(LIMIT);

    private final Duration limit;
    private final ScheduledExecutorService sampler;
    private final Thread watched = Thread.currentThread();
    private volatile long eventStart;
    private final List<String> stands = new CopyOnWriteArrayList<>();
    private long longestNanos;
    private List<String> longestStands = List.of();

    /** Watches the current thread; an event may take as long as the limit. */
    public FreezeWatch(Duration limit) {
        this.limit = limit;
        this.sampler = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "freeze watch");
            thread.setDaemon(true);
            return thread;
        });
        sampler.scheduleAtFixedRate(this::look, LOOK_EVERY.toMillis(), LOOK_EVERY.toMillis(), TimeUnit.MILLISECONDS);
    }

    static FreezeWatch current() {
        return current;
    }

    /** Starts over, as before each test. */
    static void restart() {
        current.close();
        current = new FreezeWatch(LIMIT);
    }

    /** Handles one event, as {@link Display#readAndDispatch}. */
    public boolean dispatch(Display display) {
        stands.clear();
        long start = System.nanoTime();
        eventStart = start;
        try {
            return display.readAndDispatch();
        } finally {
            eventStart = 0;
            long nanos = System.nanoTime() - start;
            if (nanos > longestNanos) {
                longestNanos = nanos;
                longestStands = List.copyOf(stands);
            }
        }
    }

    /** Whether the thread was seen in a method of that name during an event that takes longer than the limit. */
    public boolean isFrozenIn(String method) {
        return stands.stream().anyMatch(stand -> stand.contains("." + method + "("));
    }

    /** The longest time that one event took. */
    public Duration longest() {
        return Duration.ofNanos(longestNanos);
    }

    /** What to say about an event beyond the limit, empty where there was none. */
    public Optional<String> complaint() {
        if (longest().compareTo(limit) <= 0) {
            return Optional.empty();
        }
        String where = longestStands.isEmpty()
                ? " a place that was not caught"
                : longestStands.stream()
                        .limit(SHOWN)
                        .collect(Collectors.joining(System.lineSeparator() + "  and later in"));
        return Optional.of("the window was deaf for " + longest().toMillis() + " ms, in" + where);
    }

    private void look() {
        long start = eventStart;
        if (start == 0 || System.nanoTime() - start <= limit.toNanos()) {
            return;
        }
        String stand = Arrays.stream(watched.getStackTrace())
                .limit(STACK_DEPTH)
                .map(frame -> System.lineSeparator() + "    " + frame)
                .collect(Collectors.joining());
        if (!stands.contains(stand)) {
            stands.add(stand);
        }
    }

    @Override
    public void close() {
        sampler.shutdownNow();
    }
}
