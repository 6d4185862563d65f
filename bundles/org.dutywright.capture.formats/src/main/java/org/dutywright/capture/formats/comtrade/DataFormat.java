// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.comtrade;

import java.util.Locale;
import java.util.Optional;

/** How the data of a record are written. */
enum DataFormat {
    ASCII(0),
    BINARY(2),
    BINARY32(4),
    FLOAT32(4);

    private final int analogBytes;

    DataFormat(int analogBytes) {
        this.analogBytes = analogBytes;
    }

    /** Number of bytes of an analog value, 0 for text. */
    int analogBytes() {
        return analogBytes;
    }

    static Optional<DataFormat> of(String word) {
        for (DataFormat format : values()) {
            if (format.name().equals(word.toUpperCase(Locale.ROOT))) {
                return Optional.of(format);
            }
        }
        return Optional.empty();
    }
}
