// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;

/** What a person sees of a control: the pixels on the screen, whatever the control says of its colours. */
public final class Pixels {
    private static final int BRIGHTEST_DARK = 100;
    private static final int DARKEST_LIGHT = 200;
    /** Of 255. Smoothed letters of the usual size reach it in each theme; a ghost of a text does not. */
    private static final int LEGIBLE = 60;

    private final Map<RGB, Integer> counts;

    private Pixels(Map<RGB, Integer> counts) {
        this.counts = counts;
    }

    /** The pixels where the control is. */
    public static Pixels of(Control control) {
        Point size = control.getSize();
        return of(control, new Rectangle(0, 0, size.x, size.y));
    }

    /** The pixels of a part of the control, in its own coordinates. */
    public static Pixels of(Control control, Rectangle part) {
        Point corner = control.toDisplay(part.x, part.y);
        return of(control.getDisplay(), new Rectangle(corner.x, corner.y, part.width, part.height));
    }

    private static Pixels of(Display display, Rectangle part) {
        Rectangle seen = part.intersection(display.getBounds());
        Map<RGB, Integer> counts = new HashMap<>();
        if (seen.isEmpty()) {
            return new Pixels(counts);
        }
        Image image = new Image(display, seen.width, seen.height);
        GC gc = new GC(display);
        try {
            gc.copyArea(image, seen.x, seen.y);
            ImageData data = image.getImageData();
            for (int y = 0; y < data.height; y++) {
                for (int x = 0; x < data.width; x++) {
                    counts.merge(data.palette.getRGB(data.getPixel(x, y)), 1, Integer::sum);
                }
            }
            return new Pixels(counts);
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    /** The colour of most pixels. */
    public RGB ground() {
        return counts.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElseThrow();
    }

    /** How many pixels have that colour. */
    public int count(RGB colour) {
        return counts.getOrDefault(colour, 0);
    }

    /** Whether most pixels have a colour that fits the theme. */
    public boolean haveGroundOf(Theme theme) {
        int brightness = brightness(ground());
        return theme == Theme.DARK ? brightness <= BRIGHTEST_DARK : brightness >= DARKEST_LIGHT;
    }

    /** Whether something stands out from the ground well enough to be read. */
    public boolean areLegible() {
        int ground = brightness(ground());
        return counts.keySet().stream().anyMatch(colour -> Math.abs(brightness(colour) - ground) >= LEGIBLE);
    }

    private static int brightness(RGB colour) {
        return (colour.red + colour.green + colour.blue) / 3;
    }

    @Override
    public String toString() {
        return counts.isEmpty() ? "nothing" : ground() + (areLegible() ? ", legible" : ", nothing legible");
    }
}
