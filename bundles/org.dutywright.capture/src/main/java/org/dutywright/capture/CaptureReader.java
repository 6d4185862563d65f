// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;

/**
 * Reads one file format. Found as a Java service ({@code META-INF/services}), so that the same jar works on the
 * command line, in a test and in the workbench. Implementations are stateless.
 */
public interface CaptureReader {
    /** Short unique name, letters, digits and dashes. */
    String id();

    /** What the format is, in words for the user. */
    String title();

    /**
     * Whether a file looks like this format, by its content.
     *
     * @param head the first bytes of the file, at most 64 KiB
     * @return 0 not at all, 100 certain; the highest wins
     */
    int likelihood(byte[] head);

    /**
     * Whether a file looks like this format, for formats of several files: what one of them says may tell what another
     * is. To be overridden by such only.
     *
     * @param file the file
     * @param head its first bytes, at most 64 KiB
     * @return as {@link #likelihood(byte[])}, which is asked here
     */
    default int likelihood(Path file, byte[] head) throws IOException {
        return likelihood(head);
    }

    /** Parts of the settings that this format has a use for; others said about a file of it are refused. */
    default Set<ReadSettings.Part> takes() {
        return Set.of();
    }

    /**
     * Reads the file. Memory does not grow with the length of the file.
     *
     * @param file the file, never written to
     * @param settings what the user says about it
     * @param progress gets one task in bytes of the file
     * @throws UnreadableException if the content is not what it should be
     * @throws IOException if the file cannot be read at all, or the disk is full
     * @throws CancelledException if the user asked to stop; nothing is left behind
     */
    Capture read(Path file, ReadSettings settings, Progress progress) throws UnreadableException, IOException;
}
