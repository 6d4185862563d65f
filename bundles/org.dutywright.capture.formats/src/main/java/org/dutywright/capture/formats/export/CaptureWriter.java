// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.export;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.dutywright.capture.Capture;
import org.dutywright.capture.OutputFile;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/** Writes captures in one format. Implementations are stateless. */
public interface CaptureWriter {
    /** What names of its files end in, lower case, with the full stop. */
    String ending();

    /**
     * Looks at a capture, and at all its values if need be.
     *
     * @param settings what the user said about the source, by name
     * @param progress gets what looking and, later, writing report
     * @throws UnreadableException if the format cannot hold the capture
     */
    Prepared prepare(Capture capture, Map<String, String> settings, Progress progress)
            throws UnreadableException, IOException;

    /**
     * A file that can be written.
     *
     * @param content writes it; the capture must still be open
     * @param remarks what the file does not keep, and what its reader must know, a sentence each
     */
    record Prepared(OutputFile.Content content, List<String> remarks) {
        /** Copies the remarks. */
        public Prepared {
            remarks = List.copyOf(remarks);
        }
    }
}
