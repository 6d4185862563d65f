// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.nio.file.Path;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * A file that cannot be read as what it should be. Its message is one line: what happened, in which file and
 * where in it, what to try.
 */
public final class UnreadableException extends Exception {
    private static final long serialVersionUID = 1L;
    private static final Pattern CONTROLS = Pattern.compile("\\p{Cntrl}+");
    private final String file;
    private final String position;
    private final boolean settingsAtFault;

    /**
     * Makes the exception.
     *
     * @param file the file
     * @param position where in it ("line 12, column 3" or "byte 1024"), empty if the whole file is meant
     * @param problem what is wrong, without a full stop
     * @param advice what to try, without a full stop, empty if there is nothing to say
     */
    public UnreadableException(Path file, String position, String problem, String advice) {
        this(file, position, problem, advice, false);
    }

    private UnreadableException(Path file, String position, String problem, String advice, boolean settingsAtFault) {
        super(message(file, position, problem, advice));
        this.file = file.toString();
        this.position = Objects.requireNonNull(position);
        this.settingsAtFault = settingsAtFault;
    }

    /**
     * For a file that is sound and does not have what the user asked for: a column, a stretch of time.
     *
     * @param file the file
     * @param problem what it does not have, without a full stop
     * @param advice what it has instead, without a full stop
     */
    public static UnreadableException lacks(Path file, String problem, String advice) {
        return new UnreadableException(file, "", problem, advice, true);
    }

    private static String message(Path file, String position, String problem, String advice) {
        String where = position.isEmpty() ? file.toString() : file + ", " + position;
        String start = where + ": " + problem;
        // a message may quote what stands in a file, and is one line all the same
        return CONTROLS.matcher(advice.isEmpty() ? start : start + "; " + advice)
                .replaceAll(" ");
    }

    /** Whether the file is sound, and only what the user said about it is wrong. */
    public boolean settingsAtFault() {
        return settingsAtFault;
    }

    /** The file as the user named it. */
    public String file() {
        return file;
    }

    /** Where in the file, empty if the whole file is meant. */
    public String position() {
        return position;
    }
}
