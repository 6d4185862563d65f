// SPDX-License-Identifier: EPL-2.0
package org.dutywright.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine;

/** The command line. Results go to standard output, everything else to standard error. */
public final class Main {
    private Main() {}

    /** Runs the command that the arguments name and leaves with its status. */
    public static void main(String[] args) {
        Cancellation cancellation = Cancellation.bySignals();
        PrintStream out = stream(FileDescriptor.out, "stdout.encoding");
        PrintStream err = stream(FileDescriptor.err, "stderr.encoding");
        int status = run(args, out, err, cancellation, Terminal.isErrorTerminal(), ErrorLog.ofUser(System.getenv()));
        out.flush();
        err.flush();
        cancellation.finish(status);
        System.exit(status);
    }

    /**
     * Runs the command that the arguments name.
     *
     * @param out gets results
     * @param err gets messages and errors
     * @return the exit status, see {@link ExitStatus}
     */
    public static int run(String[] args, PrintStream out, PrintStream err) {
        return run(args, out, err, new Cancellation(), false, ErrorLog.ofUser(System.getenv()));
    }

    static int run(
            String[] args,
            PrintStream out,
            PrintStream err,
            Cancellation cancellation,
            boolean terminal,
            ErrorLog log) {
        Session session = new Session(out, err, cancellation, terminal);
        try {
            return execute(RootCommand.commandLine(session), args, out, session, err, log);
        } catch (Throwable error) {
            session.endProgress();
            return Failures.report(error, name(args), err, log);
        }
    }

    private static int execute(
            CommandLine root, String[] args, PrintStream out, Session session, PrintStream err, ErrorLog log) {
        root.setOut(new PrintWriter(out, true, StandardCharsets.UTF_8));
        root.setParameterExceptionHandler((error, words) -> Failures.report(
                CommandFailure.usage(UsageErrors.line(error)),
                error.getCommandLine().getCommandSpec().qualifiedName(),
                err,
                log));
        root.setExecutionExceptionHandler((error, command, parsed) -> {
            session.endProgress();
            return Failures.report(error, command.getCommandSpec().qualifiedName(), err, log);
        });
        return root.execute(args);
    }

    private static String name(String[] args) {
        return "dutywright " + String.join(" ", List.of(args).subList(0, Math.min(1, args.length)));
    }

    // Everywhere but in an old Windows console, text is UTF-8, whatever the locale says.
    private static PrintStream stream(FileDescriptor descriptor, String encodingProperty) {
        boolean windows = System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows");
        Charset charset = windows && Terminal.isConsole()
                ? Charset.forName(System.getProperty(encodingProperty, "UTF-8"))
                : StandardCharsets.UTF_8;
        OutputStream raw = new FileOutputStream(descriptor);
        return new PrintStream(new BufferedOutputStream(raw, 1 << 13), false, charset);
    }
}
