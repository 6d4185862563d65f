// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import org.dutywright.workbench.WidgetIds;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;

/** A line above the traces while they are not all there is to see yet; takes no room when there is nothing to say. */
public final class NoticeBar extends Composite {
    /** Name of its text. */
    public static final String WORDS = "capture.bar.words";
    /** Name of its button. */
    public static final String BUTTON = "capture.bar.button";

    private final Label words;
    private final Button button;
    private Runnable action = () -> {};

    NoticeBar(Composite parent) {
        super(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).margins(6, 2).applyTo(this);
        words = WidgetIds.name(new Label(this, SWT.NONE), WORDS);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(words);
        button = WidgetIds.name(new Button(this, SWT.PUSH), BUTTON);
        button.addListener(SWT.Selection, event -> action.run());
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(this);
        setVisible(false);
    }

    void say(String text, String label, Runnable next) {
        action = next;
        words.setText(text.replace("&", "&&"));
        words.setToolTipText(text);
        if (!button.getText().equals(label)) {
            button.setText(label);
            layout(true);
        }
        show(true);
    }

    void hide() {
        show(false);
    }

    private void show(boolean visible) {
        if (getVisible() != visible || ((GridData) getLayoutData()).exclude == visible) {
            ((GridData) getLayoutData()).exclude = !visible;
            setVisible(visible);
            getParent().layout(true);
        }
    }
}
