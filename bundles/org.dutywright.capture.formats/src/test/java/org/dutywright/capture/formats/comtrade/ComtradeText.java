// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Records of tests: one analog channel in millivolts, value = 2 x + 1, and one status channel. */
public final class ComtradeText {
    private ComtradeText() {}

    /** A configuration of revision 1999 with these lines for the rates. */
    public static String config(String format, String rates) {
        return config(format, rates, "1999", "1");
    }

    static String config(String format, String rates, String revision, String multiple) {
        return "yard,recorder," + revision + "\n2,1A,1D\n1,signal1,,, mV,2,1,0,-32767,32767,1,1,S\n1,key,,,0\n50\n"
                + rates + "\n25/11/2026,12:00:00.000000\n25/11/2026,12:00:00.250000\n" + format + "\n" + multiple
                + "\n";
    }

    /** Binary records; numbers and time stamps count from 1 and by 1000. */
    public static byte[] binary(int analogBytes, double... values) {
        ByteBuffer data =
                ByteBuffer.allocate(values.length * (10 + analogBytes)).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < values.length; i++) {
            data.putInt(i + 1).putInt(i * 1000);
            if (analogBytes == 2) {
                data.putShort((short) values[i]);
            } else {
                data.putInt((int) values[i]);
            }
            data.putShort((short) (i & 1));
        }
        return data.array();
    }

    static byte[] floats(double... values) {
        ByteBuffer data = ByteBuffer.allocate(values.length * 14).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < values.length; i++) {
            data.putInt(i + 1).putInt(i * 1000).putFloat((float) values[i]).putShort((short) (i & 1));
        }
        return data.array();
    }
}
