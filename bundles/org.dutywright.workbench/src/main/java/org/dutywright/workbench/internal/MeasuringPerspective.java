// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import org.dutywright.workbench.WorkbenchIds;
import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.progress.IProgressConstants;

/** The perspective in which captures are opened and measured: projects left, captures in the middle, findings below. */
public final class MeasuringPerspective implements IPerspectiveFactory {
    private static final float LEFT_SHARE = 0.2f;
    private static final float EDITOR_SHARE = 0.58f;

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.addView(IPageLayout.ID_PROJECT_EXPLORER, IPageLayout.LEFT, LEFT_SHARE, layout.getEditorArea());
        IFolderLayout below = layout.createFolder(
                "org.dutywright.workbench.below", IPageLayout.BOTTOM, EDITOR_SHARE, layout.getEditorArea());
        // The first one is in front; the bundle that has it may be absent.
        if (PlatformUI.getWorkbench().getViewRegistry().find(WorkbenchIds.MEASUREMENT_VIEW) != null) {
            below.addView(WorkbenchIds.MEASUREMENT_VIEW);
        }
        below.addView(IPageLayout.ID_PROBLEM_VIEW);
        below.addView(IPageLayout.ID_PROP_SHEET);
        below.addView(IProgressConstants.PROGRESS_VIEW_ID);
        layout.setEditorOnboardingText("Open a capture from the Project Explorer, or drop a capture file here.");
    }
}
