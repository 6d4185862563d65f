// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A run of the command line inside the test.
 *
 * @param status exit status
 * @param out standard output
 * @param err standard error
 */
record Run(int status, String out, String err) {
    static Run of(Object... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        String[] args = List.of(words).stream().map(Object::toString).toArray(String[]::new);
        int status = Main.run(args, stream(out), stream(err));
        return new Run(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    static PrintStream stream(ByteArrayOutputStream bytes) {
        return new PrintStream(bytes, true, StandardCharsets.UTF_8);
    }

    /** Lines of standard error. */
    List<String> errors() {
        return err.lines().toList();
    }

    /** Lines of standard output. */
    List<String> lines() {
        return out.lines().toList();
    }
}
