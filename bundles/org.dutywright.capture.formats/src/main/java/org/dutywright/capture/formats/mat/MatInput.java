// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.mat;

import java.io.IOException;
import java.nio.file.Path;
import org.dutywright.capture.Progress;
import org.dutywright.capture.UnreadableException;

/** The file while the library reads it: remembers what was refused, and where, since the library wraps what it is thrown. */
final class MatInput {
    private final Path file;
    private final MatSpill spill;
    private final Progress progress;
    private String problem = "";
    private String advice = "copy it again, or save it again";
    private IOException failure;
    private long lastByte;

    MatInput(Path file, MatSpill spill, Progress progress) {
        this.file = file;
        this.spill = spill;
        this.progress = progress;
    }

    MatSpill spill() {
        return spill;
    }

    /** Stops the library if the user asked to; that it was cancelled is said when it has stopped. */
    void checkCancelled() throws IOException {
        if (progress.isCancelled()) {
            throw new IOException("cancelled");
        }
    }

    /** Notes where in the file the library is. */
    void at(long byteOffset) {
        lastByte = byteOffset;
    }

    /** Makes what stops the library. */
    IOException refused(String what) {
        problem = problem.isEmpty() ? what : problem;
        return new IOException(what);
    }

    /** Like {@link #refused(String)}, with what to do. */
    IOException refused(String what, String toDo) {
        advice = problem.isEmpty() ? toDo : advice;
        return refused(what);
    }

    /** Notes that the disk failed, which is no fault of the content. */
    IOException failed(IOException e) {
        failure = e;
        return e;
    }

    boolean isRefused() {
        return !problem.isEmpty();
    }

    /** What is said in the end. */
    UnreadableException unreadable() throws IOException {
        progress.checkCancelled();
        if (failure != null) {
            throw failure;
        }
        String what = problem.isEmpty() ? "the structure of the MAT-file is broken" : problem;
        return new UnreadableException(file, "byte " + lastByte, what, advice);
    }
}
