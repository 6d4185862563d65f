// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.core.runtime.ILogListener;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Platform;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Watches over the tests of a {@link WindowTest}. */
final class WindowExtension implements BeforeAllCallback, BeforeEachCallback, AfterEachCallback, AfterAllCallback {
    private static final String OURS = "org.dutywright";
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 800;

    private final List<IStatus> errors = new CopyOnWriteArrayList<>();
    private final ILogListener listener = this::note;
    private LeakWatch leaks;

    @Override
    public void beforeAll(ExtensionContext context) {
        leaks = LeakWatch.start();
        Screens.putPointerAside(Display.getCurrent());
    }

    @Override
    public void beforeEach(ExtensionContext context) {
        errors.clear();
        Platform.addLogListener(listener);
        FreezeWatch.restart();
        Pump.until(
                "the workbench window is there", () -> PlatformUI.getWorkbench().getActiveWorkbenchWindow() != null);
    }

    @Override
    public void afterEach(ExtensionContext context) {
        Platform.removeLogListener(listener);
        if (context.getExecutionException().isPresent()) {
            Shell shell = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell();
            Screens.take(
                    shell,
                    WIDTH,
                    HEIGHT,
                    "failed-" + context.getRequiredTestMethod().getName());
            return;
        }
        FreezeWatch.current().complaint().ifPresent(complaint -> {
            throw new AssertionError(complaint);
        });
        if (!errors.isEmpty()) {
            throw new AssertionError("errors in the log: " + errors);
        }
    }

    @Override
    public void afterAll(ExtensionContext context) {
        try (LeakWatch watch = leaks) {
            List<Error> found = watch.leaks();
            if (!found.isEmpty()) {
                StringWriter words = new StringWriter();
                found.forEach(error -> error.printStackTrace(new PrintWriter(words, true)));
                throw new AssertionError(found.size() + " resources were never disposed, made in " + words);
            }
        }
    }

    private void note(IStatus status, String plugin) {
        if (status.getSeverity() == IStatus.ERROR && (plugin.startsWith(OURS) || tellsOfUs(status.getException()))) {
            errors.add(status);
        }
    }

    private static boolean tellsOfUs(Throwable thrown) {
        if (thrown == null) {
            return false;
        }
        for (StackTraceElement frame : thrown.getStackTrace()) {
            if (frame.getClassName().startsWith(OURS)) {
                return true;
            }
        }
        return tellsOfUs(thrown.getCause());
    }
}
