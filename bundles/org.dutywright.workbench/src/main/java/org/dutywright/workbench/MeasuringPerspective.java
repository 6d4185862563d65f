// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench;

import org.dutywright.capture.Progress;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** The perspective in which captures are opened and measured. */
public final class MeasuringPerspective implements IPerspectiveFactory {
    @Override
    public void createInitialLayout(IPageLayout layout) {
        String a = Progress.class.getName();
        layout.addView(IPageLayout.ID_PROJECT_EXPLORER, IPageLayout.LEFT, 0.22f, IPageLayout.ID_EDITOR_AREA);
    }
}
