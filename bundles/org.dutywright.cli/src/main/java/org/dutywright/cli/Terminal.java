// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Whether a person sits at the other end, as far as Java can tell. */
final class Terminal {
    private Terminal() {}

    /** Whether standard input and output go to a terminal. */
    static boolean isConsole() {
        return Optional.ofNullable(System.console()).map(Terminal::isTerminal).orElse(false);
    }

    // From Java 22 on there may be a console without a terminal, and a method that tells; before there was none.
    private static boolean isTerminal(Console console) {
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException e) {
            return true;
        } catch (ReflectiveOperationException e) {
            return false;
        }
    }

    /** Whether standard error goes to a terminal as well. */
    static boolean isErrorTerminal() {
        if (!isConsole()) {
            return false;
        }
        // The console does not vouch for standard error; where the system tells where it goes, ask it.
        Path error = Path.of("/proc/self/fd/2");
        try {
            return !Files.isSymbolicLink(error)
                    || isTerminalDevice(Files.readSymbolicLink(error).toString());
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean isTerminalDevice(String file) {
        return file.startsWith("/dev/pts/") || file.startsWith("/dev/tty") || file.equals("/dev/console");
    }
}
