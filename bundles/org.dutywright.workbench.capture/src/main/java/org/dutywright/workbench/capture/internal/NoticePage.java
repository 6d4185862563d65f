// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.capture.internal;

import java.util.OptionalDouble;
import org.dutywright.workbench.WidgetIds;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;
import org.eclipse.swt.widgets.Text;

/** Stands in for the traces while there are none: what is going on or went wrong, and what can be done about it. */
public final class NoticePage extends Composite {
    /** Name of the heading. */
    public static final String TITLE = "capture.notice.title";
    /** Name of the text below it. */
    public static final String WORDS = "capture.notice.words";
    /** Name of the button that cancels or tries again. */
    public static final String BUTTON = "capture.notice.button";

    private static final int WIDTH = 560;
    private static final int BAR_STEPS = 1000;

    private final Label title;
    private final Text words;
    private final ProgressBar bar;
    private final Button button;
    private Runnable action = () -> {};

    NoticePage(Composite parent) {
        super(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().margins(28, 24).spacing(0, 10).applyTo(this);
        title = WidgetIds.name(new Label(this, SWT.NONE), TITLE);
        title.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DIALOG_FONT));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(title);
        // a text and no label, so that the message can be copied
        words = WidgetIds.name(new Text(this, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI), WORDS);
        GridDataFactory.fillDefaults().hint(WIDTH, SWT.DEFAULT).applyTo(words);
        bar = new ProgressBar(this, SWT.HORIZONTAL | SWT.SMOOTH);
        bar.setMaximum(BAR_STEPS);
        GridDataFactory.fillDefaults()
                .align(SWT.BEGINNING, SWT.CENTER)
                .hint(WIDTH, SWT.DEFAULT)
                .applyTo(bar);
        button = WidgetIds.name(new Button(this, SWT.PUSH), BUTTON);
        button.addListener(SWT.Selection, event -> action.run());
    }

    void progress(String heading, String task, OptionalDouble share, Runnable cancel) {
        fill(heading, task, Messages.cancel, cancel);
        bar.setVisible(share.isPresent());
        share.ifPresent(part -> bar.setSelection((int) Math.round(part * BAR_STEPS)));
    }

    void message(String heading, String text, Runnable again) {
        bar.setVisible(false);
        fill(heading, text, Messages.again, again);
    }

    private void fill(String heading, String text, String label, Runnable next) {
        action = next;
        boolean same = words.getText().equals(text) && button.getText().equals(label);
        title.setText(heading.replace("&", "&&"));
        if (!same) {
            words.setText(text);
            button.setText(label);
            layout(true);
        }
    }

    @Override
    public boolean setFocus() {
        return button.setFocus();
    }
}
