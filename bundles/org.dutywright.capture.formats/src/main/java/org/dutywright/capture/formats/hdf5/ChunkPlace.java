// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import java.nio.file.Path;
import org.dutywright.capture.UnreadableException;

/**
 * Where something goes wrong, for messages.
 *
 * @param file the file
 * @param byteOffset in it
 * @param path of the dataset
 */
record ChunkPlace(Path file, long byteOffset, String path) {
    UnreadableException broken(String problem) {
        return new UnreadableException(
                file, "byte " + byteOffset, "dataset " + path + ": " + problem, "copy or export it again");
    }

    UnreadableException tooLarge(String problem, String advice) {
        return new UnreadableException(file, "", "dataset " + path + ": " + problem, advice);
    }
}
