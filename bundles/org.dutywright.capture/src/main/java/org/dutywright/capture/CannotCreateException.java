// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** An output file that cannot be created or written. Its message is one line: which file, why, what to try. */
public final class CannotCreateException extends IOException {
    private static final long serialVersionUID = 1L;

    /**
     * Makes the exception.
     *
     * @param file the output file as the user named it
     * @param cause what the system said
     */
    public CannotCreateException(Path file, IOException cause) {
        super(file + ": cannot be written: " + reason(cause), cause);
    }

    /**
     * Makes the exception.
     *
     * @param file the output file as the user named it
     * @param problem why not, and what to try, without a full stop
     */
    public CannotCreateException(Path file, String problem) {
        super(file + ": cannot be written: " + problem);
    }

    private static String reason(IOException cause) {
        if (cause instanceof NoSuchFileException) {
            return "its folder does not exist; make the folder first";
        }
        if (cause instanceof AccessDeniedException) {
            return "no permission; choose another folder";
        }
        if (cause instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        String message = cause.getMessage();
        return message == null ? cause.getClass().getSimpleName() : message;
    }
}
