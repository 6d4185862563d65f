// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.tests;

import org.dutywright.workbench.capture.internal.Selections;
import org.dutywright.workbench.tests.kit.Pump;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;

/** Another part of the window, in which something is chosen. */
public final class Elsewhere extends ViewPart {
    private static final String ID = "org.dutywright.workbench.capture.tests.elsewhere";

    private final Selections selections = new Selections();
    private Composite body;

    /** Chooses it there. */
    static void choose(Object chosen) throws PartInitException {
        Elsewhere view = (Elsewhere) CaptureDesk.page().showView(ID);
        Pump.settle();
        view.selections.setSelection(new StructuredSelection(chosen));
        Pump.settle();
        CaptureDesk.page().hideView(view);
    }

    @Override
    public void createPartControl(Composite parent) {
        body = parent;
        getSite().setSelectionProvider(selections);
    }

    @Override
    public void setFocus() {
        body.setFocus();
    }
}
