// SPDX-License-Identifier: EPL-2.0
import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.view.ViewBox;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * Draws the product's pictures from the SVG files beside this one. To be run by hand after one of them has changed:
 *
 * <pre>java -Djava.awt.headless=true -cp JSVG_JAR releng/branding/Draw.java</pre>
 *
 * where JSVG_JAR is com.github.weisj:jsvg in the version of the target platform.
 */
final class Draw {
    private static final int[] SMALL_PIXELS = {16, 24, 32};
    private static final int[] LARGE_PIXELS = {48, 64, 128, 256};

    private Draw() {}

    public static void main(String[] arguments) throws IOException {
        Path bundle = Path.of("bundles", "org.dutywright.workbench");
        Path icons = Files.createDirectories(bundle.resolve("icons"));
        for (int pixels : SMALL_PIXELS) {
            draw("icon-small.svg", pixels, pixels, BufferedImage.TYPE_INT_ARGB, icons.resolve("dutywright" + pixels + ".png"));
        }
        for (int pixels : LARGE_PIXELS) {
            draw("icon.svg", pixels, pixels, BufferedImage.TYPE_INT_ARGB, icons.resolve("dutywright" + pixels + ".png"));
        }
        draw("splash.svg", 480, 280, BufferedImage.TYPE_INT_RGB, bundle.resolve("splash.png"));
    }

    private static void draw(String svg, int width, int height, int type, Path png) throws IOException {
        SVGDocument document = new SVGLoader().load(Path.of("releng", "branding", svg).toUri().toURL());
        if (document == null) {
            throw new IOException(svg + " cannot be read");
        }
        BufferedImage image = new BufferedImage(width, height, type);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setBackground(new Color(0, true));
        document.render(null, graphics, new ViewBox(width, height));
        graphics.dispose();
        if (!ImageIO.write(image, "png", png.toFile())) {
            throw new IOException("no writer for " + png);
        }
    }
}
