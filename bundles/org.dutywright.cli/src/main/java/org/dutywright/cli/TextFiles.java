// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads texts that people write. */
final class TextFiles {
    private static final long MOST_BYTES = 10L << 20;

    private TextFiles() {}

    /**
     * The content of a file.
     *
     * @throws CommandFailure if it is no UTF-8 text or far too long for one
     */
    static String read(Path file) throws IOException {
        if (Files.size(file) > MOST_BYTES) {
            throw CommandFailure.unreadable(file + ": is too long for a text of this kind; name another file");
        }
        try {
            return Files.readString(file);
        } catch (CharacterCodingException e) {
            throw CommandFailure.unreadable(file + ": is not UTF-8 text; save it as UTF-8");
        }
    }
}
