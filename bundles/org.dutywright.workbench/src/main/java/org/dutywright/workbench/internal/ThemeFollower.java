// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.internal;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.e4.ui.css.swt.internal.theme.ThemeEngine;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.PlatformUI;

/**
 * Makes a theme that is put on reach all that is open. With GTK 3 the platform takes the old theme's colours off while it
 * still knows the window system's colours that went with it, and what then falls back on one of those keeps it for good.
 */
public final class ThemeFollower implements IStartup {
    private static final List<Integer> FALLBACKS = List.of(
            SWT.COLOR_WIDGET_FOREGROUND,
            SWT.COLOR_WIDGET_BACKGROUND,
            SWT.COLOR_LIST_FOREGROUND,
            SWT.COLOR_LIST_BACKGROUND);

    private Set<RGB> known = Set.of();

    @Override
    public void earlyStartup() {
        Display display = PlatformUI.getWorkbench().getDisplay();
        display.asyncExec(() -> {
            ThemeEngine engine = (ThemeEngine) PlatformUI.getWorkbench().getService(IThemeEngine.class);
            known = fallbacks(display);
            display.addListener(SWT.Settings, event -> follow(display, engine));
        });
    }

    private static Set<RGB> fallbacks(Display display) {
        return FALLBACKS.stream()
                .map(id -> display.getSystemColor(id).getRGB())
                .collect(Collectors.toUnmodifiableSet());
    }

    private void follow(Display display, ThemeEngine engine) {
        Set<RGB> now = fallbacks(display);
        if (now.equals(known)) {
            return;
        }
        Set<RGB> either = new HashSet<>(known);
        either.addAll(now);
        known = now;
        // It keeps each colour it has looked up until it begins anew.
        engine.resetCurrentTheme();
        for (Shell shell : display.getShells()) {
            renew(shell, either);
            engine.applyStyles(shell, true);
        }
    }

    /**
     * Lets what has a fallback, or seems to have it, fall back anew; what has a colour of its own keeps it. What is out of
     * sight still tells the colours of the time when it was last seen, so it is renewed in any case.
     */
    private static void renew(Control control, Set<RGB> fallbacks) {
        boolean unsure = !control.isVisible();
        Color foreground = control.getForeground();
        if (unsure || fallbacks.contains(foreground.getRGB())) {
            // To the toolkit it has no colour already, so it would not take it off without another one before.
            control.setForeground(opposite(foreground));
            control.setForeground(null);
        }
        Color background = control.getBackground();
        if (unsure || fallbacks.contains(background.getRGB())) {
            control.setBackground(opposite(background));
            control.setBackground(null);
        }
        if (control instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                renew(child, fallbacks);
            }
        }
    }

    private static Color opposite(Color colour) {
        int white = 255;
        return new Color(white - colour.getRed(), white - colour.getGreen(), white - colour.getBlue());
    }
}
