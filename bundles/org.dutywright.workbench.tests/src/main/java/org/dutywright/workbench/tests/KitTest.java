// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.dutywright.workbench.tests.kit.FreezeWatch;
import org.dutywright.workbench.tests.kit.LeakWatch;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Display;
import org.junit.jupiter.api.Test;

/** The watches that the window tests rely on do see what they watch for. */
final class KitTest {
    @Test
    void a_resource_that_is_never_disposed_is_found_with_the_place_where_it_was_made() {
        try (LeakWatch watch = LeakWatch.start()) {
            leakAnImage();

            assertThat(watch.leaks())
                    .singleElement()
                    .satisfies(error -> assertThat(error.getStackTrace())
                            .anyMatch(frame -> frame.getMethodName().equals("leakAnImage")));
        }
    }

    @Test
    void a_resource_that_is_disposed_is_no_leak() {
        try (LeakWatch watch = LeakWatch.start()) {
            new Image(Display.getCurrent(), (gc, width, height) -> {}, 1, 1).dispose();

            assertThat(watch.leaks()).isEmpty();
        }
    }

    @Test
    void an_event_that_takes_too_long_is_complained_of_with_the_place_where_it_stood() {
        Duration limit = Duration.ofMillis(1);
        CountDownLatch never = new CountDownLatch(1);
        try (FreezeWatch watch = new FreezeWatch(limit)) {
            boolean[] ran = new boolean[1];
            Display.getCurrent().asyncExec(() -> {
                ran[0] = true;
                standStill(never, watch);
            });
            while (!ran[0]) {
                watch.dispatch(Display.getCurrent());
            }

            assertThat(watch.longest()).isGreaterThan(limit);
            assertThat(watch.complaint())
                    .hasValueSatisfying(text -> assertThat(text).startsWith("the window was deaf for "));
        }
    }

    private static void leakAnImage() {
        assertThat(new Image(Display.getCurrent(), (gc, width, height) -> {}, 1, 1).isDisposed())
                .isFalse();
    }

    /** Blocks this thread until the watch has noticed it here, as a slow file or a long computation would. */
    private static void standStill(CountDownLatch never, FreezeWatch watch) {
        try {
            while (!watch.isFrozenIn("standStill")) {
                assertThat(never.await(1, TimeUnit.MILLISECONDS)).isFalse();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
