// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import org.dutywright.workbench.WorkbenchIds;
import org.dutywright.workbench.tests.kit.Screens;
import org.dutywright.workbench.tests.kit.Theme;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pictures of the window for a person to look at, in both themes and two sizes. */
@WindowTest
final class ScreensTest {
    private final IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();

    @AfterEach
    void cleanUp() {
        Theme.LIGHT.use();
        window.getActivePage().closeAllEditors(false);
    }

    @ParameterizedTest
    @CsvSource({"LIGHT, 1280, 800", "DARK, 1280, 800", "LIGHT, 1920, 1080", "DARK, 1920, 1080"})
    void the_empty_workspace_says_what_to_do(Theme theme, int width, int height) throws Exception {
        assumeTrue(Screens.hasRoomFor(width, height), "the screen is smaller than " + width + " x " + height);
        Shell shell = window.getShell();
        window.getService(IHandlerService.class).executeCommand(WorkbenchIds.OPEN_START_PAGE, null);
        theme.use();

        Path picture = Screens.take(shell, width, height, "start-" + theme);

        // A window that failed to paint shows a handful of colours; text alone, smoothed, brings dozens.
        assertThat(Screens.colours(picture)).isGreaterThan(50);
    }
}
