// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Resource;
import org.eclipse.swt.widgets.Display;

/**
 * Hears of every image, font and other resource of the window system that the garbage collector finds undisposed. What
 * the platform itself leaks is not ours to judge: only resources made below a line of this project count.
 */
public final class LeakWatch implements AutoCloseable {
    private static final String OURS = "org.dutywright.";

    private final List<Error> undisposed = new CopyOnWriteArrayList<>();

    private LeakWatch() {}

    /** Listens from now on; resources made earlier are not seen. */
    public static LeakWatch start() {
        LeakWatch watch = new LeakWatch();
        Resource.setNonDisposeHandler(watch.undisposed::add);
        return watch;
    }

    /** Where each leaked resource was made. Runs the garbage collector until it has proved to have been through. */
    public List<Error> leaks() {
        for (int round = 0; round < 2; round++) {
            Sentinel.leak(Display.getCurrent());
            int wanted = round + 1;
            Pump.until("the garbage collector has found the resource leaked on purpose", () -> {
                System.gc();
                return undisposed.stream().filter(Sentinel::isMine).count() >= wanted;
            });
        }
        return undisposed.stream()
                .filter(error -> !Sentinel.isMine(error))
                .filter(LeakWatch::isOurs)
                .toList();
    }

    private static boolean isOurs(Error error) {
        for (StackTraceElement frame : error.getStackTrace()) {
            if (frame.getClassName().startsWith(OURS)
                    && !frame.getClassName().startsWith(LeakWatch.class.getPackageName())) {
                return true;
            }
        }
        return false;
    }

    @Override
    public void close() {
        Resource.setNonDisposeHandler(null);
    }

    /** A resource leaked on purpose: once the collector has found it, it has found those leaked before it as well. */
    private static final class Sentinel {
        static void leak(Display display) {
            new Image(display, (gc, width, height) -> {}, 1, 1).isDisposed();
        }

        static boolean isMine(Error error) {
            for (StackTraceElement frame : error.getStackTrace()) {
                if (frame.getClassName().equals(Sentinel.class.getName())) {
                    return true;
                }
            }
            return false;
        }
    }
}
