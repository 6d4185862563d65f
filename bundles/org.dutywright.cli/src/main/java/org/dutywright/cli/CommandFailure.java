// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

/** Something expected that ends a command. Its message is one line for the user. */
final class CommandFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int status;

    private CommandFailure(int status, String message) {
        super(message);
        this.status = status;
    }

    /** The command line itself is wrong. */
    static CommandFailure usage(String message) {
        return new CommandFailure(ExitStatus.USAGE, message);
    }

    /** An input is not there. */
    static CommandFailure noInput(String message) {
        return new CommandFailure(ExitStatus.NO_INPUT, message);
    }

    /** The content of an input is not what it should be. */
    static CommandFailure unreadable(String message) {
        return new CommandFailure(ExitStatus.UNREADABLE, message);
    }

    int status() {
        return status;
    }
}
