// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.util.Locale;
import org.dutywright.workbench.TraceColours;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;

/** The two faces of the product. */
public enum Theme {
    LIGHT("org.eclipse.e4.ui.css.theme.e4_default"),
    DARK("org.eclipse.e4.ui.css.theme.e4_dark");

    private final String id;

    Theme(String id) {
        this.id = id;
    }

    /** The id by which the platform knows it. */
    public String id() {
        return id;
    }

    /** Puts it on the whole workbench until another is put on; it is not kept for the next start. */
    public void use() {
        IThemeEngine engine = PlatformUI.getWorkbench().getService(IThemeEngine.class);
        engine.setTheme(id, false);
        Pump.until("the theme is " + this, () -> engine.getActiveTheme().getId().equals(id));
        Pump.until("the window system has the colours of " + this, this::isOfSystem);
        Pump.settle();
    }

    private boolean isOfSystem() {
        RGB ground =
                Display.getCurrent().getSystemColor(SWT.COLOR_LIST_BACKGROUND).getRGB();
        return this == DARK == TraceColours.isDark(ground);
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
