// SPDX-License-Identifier: EPL-2.0
package org.dutywright.workbench;

import java.util.List;
import org.eclipse.swt.graphics.RGB;

/**
 * Colours of traces, from the palette for colour-blind readers of Okabe and Ito (2008). Colour is never the only sign:
 * each trace carries its name. On a light ground sky blue and reddish purple are darkened to a contrast of 3:1.
 */
public final class TraceColours {
    private static final RGB BLUISH_GREEN = new RGB(0x00, 0x9E, 0x73);
    private static final RGB VERMILLION = new RGB(0xD5, 0x5E, 0x00);
    private static final RGB SKY_BLUE = new RGB(0x56, 0xB4, 0xE9);
    private static final RGB REDDISH_PURPLE = new RGB(0xCC, 0x79, 0xA7);
    private static final RGB DARKER_SKY_BLUE = new RGB(0x2F, 0x8F, 0xC9);
    private static final RGB DARKER_REDDISH_PURPLE = new RGB(0xC4, 0x6A, 0x9C);

    private static final List<RGB> ON_DARK = List.of(BLUISH_GREEN, VERMILLION, SKY_BLUE, REDDISH_PURPLE);
    private static final List<RGB> ON_LIGHT = List.of(BLUISH_GREEN, VERMILLION, DARKER_SKY_BLUE, DARKER_REDDISH_PURPLE);

    private static final double RED_SHARE = 0.299;
    private static final double GREEN_SHARE = 0.587;
    private static final double BLUE_SHARE = 0.114;
    private static final double MIDDLE = 128;

    private TraceColours() {}

    /** The colour of a channel on that ground; after the fourth channel they begin again. */
    public static RGB of(int channel, RGB ground) {
        List<RGB> colours = isDark(ground) ? ON_DARK : ON_LIGHT;
        return colours.get(Math.floorMod(channel, colours.size()));
    }

    /** Whether light colours stand out better from that ground than dark ones. */
    public static boolean isDark(RGB ground) {
        // weights of luma as of Recommendation ITU-R BT.601
        return RED_SHARE * ground.red + GREEN_SHARE * ground.green + BLUE_SHARE * ground.blue < MIDDLE;
    }
}
