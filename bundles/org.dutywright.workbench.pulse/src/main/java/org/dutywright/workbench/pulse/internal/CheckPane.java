// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.pulse.internal;

import java.util.Optional;
import org.dutywright.workbench.WidgetIds;
import org.dutywright.workbench.pulse.PulseIds;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** What the last check of the capture found. */
final class CheckPane {
    private final Composite pane;
    private final Label verdict;
    private final Text found;

    CheckPane(Composite parent) {
        pane = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().margins(6, 4).applyTo(pane);
        verdict = WidgetIds.name(new Label(pane, SWT.WRAP), PulseIds.VERDICT);
        verdict.setFont(JFaceResources.getBannerFont());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(verdict);
        found = WidgetIds.name(new Text(pane, SWT.MULTI | SWT.READ_ONLY | SWT.V_SCROLL | SWT.H_SCROLL), PulseIds.FOUND);
        found.setFont(JFaceResources.getTextFont());
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(found);
    }

    Composite control() {
        return pane;
    }

    void show(Optional<CheckReport> report) {
        verdict.setText(
                report.map(CheckReport::headline).orElse(Messages.notChecked).replace("&", "&&"));
        found.setText(report.map(it -> String.join("\n", it.lines())).orElse(""));
        pane.layout();
    }
}
