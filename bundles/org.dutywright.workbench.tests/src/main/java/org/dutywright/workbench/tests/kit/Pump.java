// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.time.Duration;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.eclipse.swt.widgets.Display;

/**
 * Runs the event loop from a test, which itself runs in the user-interface thread. Everything the window does happens
 * inside a wait, one event after the other, each under the eyes of the {@link FreezeWatch}.
 */
public final class Pump {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    /** Only wakes the loop to look at the condition again; nothing waits for this long. */
    private static final int WAKE_MILLIS = 20;

    private Pump() {}

    /** Handles events until the condition holds; fails with the words of what was awaited after a minute. */
    public static void until(String awaited, BooleanSupplier condition) {
        Display display = Display.getCurrent();
        long deadline = System.nanoTime() + PATIENCE.toNanos();
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() > deadline) {
                throw new AssertionError("waited a minute in vain until " + awaited);
            }
            display.timerExec(WAKE_MILLIS, () -> {});
            if (!FreezeWatch.current().dispatch(display)) {
                display.sleep();
            }
        }
    }

    /**
     * Handles events until the condition holds, at most a minute.
     *
     * @param found tells what is there in its stead
     * @return empty if the condition came to hold, else what is there
     */
    public static Optional<String> lastUntil(Supplier<String> found, BooleanSupplier condition) {
        try {
            until("a condition holds", condition);
            return Optional.empty();
        } catch (AssertionError e) {
            return Optional.of(found.get());
        }
    }

    /** Handles events until there is a value. */
    public static <T> T untilPresent(String awaited, Supplier<Optional<T>> value) {
        Holder<T> holder = new Holder<>();
        until(awaited, () -> {
            holder.value = value.get();
            return holder.value.isPresent();
        });
        return holder.value.orElseThrow();
    }

    /** Handles the events that are due now and those they lead to, as far as a marker put at the end of the queue. */
    public static void settle() {
        Display display = Display.getCurrent();
        for (int round = 0; round < 3; round++) {
            boolean[] reached = new boolean[1];
            display.asyncExec(() -> reached[0] = true);
            until("the events that are due are handled", () -> reached[0]);
        }
        // Painting comes when the queue is empty, and an animation never lets it be: hence the bound.
        for (int event = 0; event < 1000 && FreezeWatch.current().dispatch(display); event++) {
            display.update();
        }
    }

    private static final class Holder<T> {
        private Optional<T> value = Optional.empty();
    }
}
