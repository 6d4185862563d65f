// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URL;
import java.util.Arrays;
import org.dutywright.workbench.tests.kit.Pump;
import org.dutywright.workbench.tests.kit.Widgets;
import org.dutywright.workbench.tests.kit.WindowTest;
import org.eclipse.search.ui.NewSearchUI;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.cheatsheets.OpenCheatSheetAction;
import org.eclipse.ui.forms.widgets.ExpandableComposite;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is taken from the platform is there and works. */
@WindowTest
final class PlatformPartsTest {
    private static final String CHEAT_SHEETS = "org.eclipse.ui.cheatsheets.views.CheatSheetView";

    private final IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();

    @ParameterizedTest
    @ValueSource(
            strings = {
                NewSearchUI.SEARCH_VIEW_ID,
                CHEAT_SHEETS,
                "org.eclipse.team.ui.GenericHistoryView",
                "org.eclipse.ui.views.ContentOutline"
            })
    void the_view_opens_and_closes(String view) throws Exception {
        IWorkbenchPage page = window.getActivePage();

        IViewPart part = page.showView(view);
        Pump.settle();
        assertThat(page.isPartVisible(part)).isTrue();

        page.hideView(part);
        assertThat(page.findView(view)).isNull();
    }

    @Test
    void a_cheat_sheet_shows_its_steps() {
        URL sheet = getClass().getResource("/sheets/two-steps.xml");
        new OpenCheatSheetAction("org.dutywright.workbench.tests.twoSteps", "Two steps", sheet).run();

        Pump.until(
                "the first step is shown",
                () -> Widgets.withChildren(window.getShell())
                        .filter(ExpandableComposite.class::isInstance)
                        .anyMatch(step -> ((ExpandableComposite) step).getText().equals("Clip on both signals")));

        IViewPart view = window.getActivePage().findView(CHEAT_SHEETS);
        assertThat(view).isNotNull();
        window.getActivePage().hideView(view);
    }

    @Test
    void the_search_dialog_opens_and_closes() {
        Shell main = window.getShell();
        boolean[] seen = new boolean[1];
        // The dialog runs an event loop of its own until it is closed, so it is closed from within that loop.
        closeDialogOnceOpen(main, seen);

        NewSearchUI.openSearchDialog(window, "org.eclipse.search.internal.ui.text.TextSearchPage");

        assertThat(seen[0]).isTrue();
    }

    private static void closeDialogOnceOpen(Shell main, boolean[] seen) {
        Display display = main.getDisplay();
        display.timerExec(
                20,
                () -> Arrays.stream(display.getShells())
                        .filter(shell -> shell.getParent() == main && shell.isVisible())
                        .findFirst()
                        .ifPresentOrElse(
                                shell -> {
                                    seen[0] = true;
                                    shell.close();
                                },
                                () -> closeDialogOnceOpen(main, seen)));
    }
}
