// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import java.util.List;
import org.dutywright.workbench.WorkbenchIds;
import org.eclipse.ui.IPerspectiveDescriptor;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PerspectiveAdapter;
import org.eclipse.ui.PlatformUI;

/**
 * Takes buttons and menus for writing programs out of our perspective. The platform puts them into every perspective, and
 * a perspective can say only which it wants beside those.
 */
public final class UnusedActionSets extends PerspectiveAdapter implements IStartup {
    private static final List<String> UNUSED = List.of(
            "org.eclipse.ui.edit.text.actionSet.annotationNavigation",
            "org.eclipse.ui.edit.text.actionSet.navigation",
            "org.eclipse.ui.edit.text.actionSet.convertLineDelimitersTo");

    @Override
    public void earlyStartup() {
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
            for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
                window.addPerspectiveListener(this);
                for (IWorkbenchPage page : window.getPages()) {
                    hide(page, page.getPerspective());
                }
            }
        });
    }

    @Override
    public void perspectiveActivated(IWorkbenchPage page, IPerspectiveDescriptor perspective) {
        hide(page, perspective);
    }

    @Override
    public void perspectiveChanged(IWorkbenchPage page, IPerspectiveDescriptor perspective, String change) {
        if (change.equals(IWorkbenchPage.CHANGE_RESET_COMPLETE)) {
            hide(page, perspective);
        }
    }

    private static void hide(IWorkbenchPage page, IPerspectiveDescriptor perspective) {
        if (perspective != null && perspective.getId().equals(WorkbenchIds.PERSPECTIVE)) {
            UNUSED.forEach(page::hideActionSet);
        }
    }
}
