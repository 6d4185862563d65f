// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench.tests.kit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;

/** Takes pictures of the window for a person to look at; they lie in target/screens. */
public final class Screens {
    private static final Path FOLDER = Path.of("target", "screens");

    private Screens() {}

    /** Whether the screen is large enough for a window of that size. */
    public static boolean hasRoomFor(int width, int height) {
        Rectangle screen = Display.getCurrent().getBounds();
        return screen.width >= width && screen.height >= height;
    }

    /** Takes a picture of what is there without waiting for anything. */
    public static Path take(Shell shell, int width, int height, String name) {
        return take(shell, width, height, name, () -> true);
    }

    /**
     * Brings the shell to that size at the corner of the screen and takes its picture once it shows what the name says.
     *
     * @param ready whether that is on the screen; asked again after the shell has got its size
     */
    public static Path take(Shell shell, int width, int height, String name, BooleanSupplier ready) {
        putPointerAside(shell.getDisplay());
        Rectangle bounds = boundsFor(shell.getDisplay(), width, height);
        shell.setBounds(0, 0, bounds.width, bounds.height);
        shell.forceActive();
        Pump.until("the window fills its new size", () -> covers(shell, width, height));
        Pump.settle();
        Pump.until("the window shows " + name, ready);
        Pump.settle();
        Pump.until("the window still shows " + name, ready);
        Path file = FOLDER.resolve(name + "-" + width + "x" + height + ".png");
        save(shell.getDisplay(), new Rectangle(0, 0, width, height), file);
        return file;
    }

    /** Where it hovers over something, its tooltip would be in the picture. */
    static void putPointerAside(Display display) {
        Rectangle screen = display.getBounds();
        display.setCursorLocation(screen.x + screen.width - 1, screen.y + screen.height - 1);
    }

    /** Without a window manager a shell has no trim, but the toolkit reckons with one. */
    private static Rectangle boundsFor(Display display, int width, int height) {
        Shell probe = new Shell(display);
        try {
            return probe.computeTrim(0, 0, width, height);
        } finally {
            probe.dispose();
        }
    }

    /** The size of a shell is told at once, but the screen and the layout follow when its server has answered. */
    private static boolean covers(Shell shell, int width, int height) {
        Rectangle area = shell.getClientArea();
        boolean laidOut = Arrays.stream(shell.getChildren())
                .map(child -> child.getBounds())
                .anyMatch(child -> child.x + child.width >= area.width && child.y + child.height >= area.height);
        return laidOut && brightness(shell.getDisplay(), width - 2, height - 2) != 0;
    }

    private static int brightness(Display display, int x, int y) {
        Image image = new Image(display, 1, 1);
        GC gc = new GC(display);
        try {
            gc.copyArea(image, x, y);
            ImageData data = image.getImageData();
            RGB colour = data.palette.getRGB(data.getPixel(0, 0));
            return colour.red + colour.green + colour.blue;
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    /** How many different colours a picture has: a window that shows nothing has very few. */
    public static long colours(Path picture) {
        ImageData data = new ImageData(picture.toString());
        int[] row = new int[data.width];
        return java.util.stream.IntStream.range(0, data.height)
                .flatMap(y -> {
                    data.getPixels(0, y, data.width, row, 0);
                    return Arrays.stream(row.clone());
                })
                .distinct()
                .count();
    }

    private static void save(Display display, Rectangle part, Path file) {
        Image image = new Image(display, part.width, part.height);
        GC gc = new GC(display);
        try {
            gc.copyArea(image, part.x, part.y);
            Files.createDirectories(FOLDER);
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {image.getImageData()};
            loader.save(file.toString(), SWT.IMAGE_PNG);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            gc.dispose();
            image.dispose();
        }
    }
}
