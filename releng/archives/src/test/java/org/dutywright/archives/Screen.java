// SPDX-License-Identifier: EPL-2.0
package org.dutywright.archives;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTException;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Toolkit;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;

/** Looks at the screen from outside of the program that draws on it. */
final class Screen {
    /** The splash covers 480 x 280 of it, the window far more. */
    private static final long WINDOW_PIXELS = 400_000;

    private static final long PATIENCE_NANOS = TimeUnit.MINUTES.toNanos(3);
    private static final int BLACK = 0xff000000;

    private Screen() {}

    /** Waits until a window fills much of the black screen, and keeps a picture of it. */
    static void awaitWindow(Process process, Path picture) throws AWTException, IOException, InterruptedException {
        Robot robot = new Robot();
        Rectangle all = new Rectangle(Toolkit.getDefaultToolkit().getScreenSize());
        long deadline = System.nanoTime() + PATIENCE_NANOS;
        BufferedImage image = robot.createScreenCapture(all);
        while (drawn(image) < WINDOW_PIXELS) {
            assertThat(System.nanoTime()).as("no window within three minutes").isLessThan(deadline);
            // The end of the process would be news, so that is what the pause between two looks waits for.
            assertThat(process.waitFor(200, TimeUnit.MILLISECONDS))
                    .as("the workbench has ended by itself")
                    .isFalse();
            image = robot.createScreenCapture(all);
        }
        Files.createDirectories(picture.getParent());
        ImageIO.write(image, "png", picture.toFile());
    }

    private static long drawn(BufferedImage image) {
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        return Arrays.stream(pixels).filter(pixel -> (pixel | BLACK) != BLACK).count();
    }
}
