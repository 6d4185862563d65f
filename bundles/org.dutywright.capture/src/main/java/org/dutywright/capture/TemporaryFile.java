// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Temporary files in the system's folder for them, opened so that the system deletes each with its last handle: closing
 * it, the end of the process and even a killed process leave nothing behind. A process that is killed between making a
 * file and opening it leaves an empty one, which the next process that needs one removes.
 */
public final class TemporaryFile {
    private static final String START = "dutywright-";
    private static final String END = ".spill";
    private static final Pattern NAME = Pattern.compile(START + "(\\d{1,18})-\\d+" + Pattern.quote(END));
    private static final AtomicBoolean TIDIED = new AtomicBoolean();

    private TemporaryFile() {}

    /** Opens a new one for reading and writing. */
    public static FileChannel open() throws IOException {
        String start = START + ProcessHandle.current().pid() + "-";
        Path path = Files.createTempFile(start, END);
        if (TIDIED.compareAndSet(false, true)) {
            removeStale(path.toAbsolutePath().getParent());
        }
        try {
            return FileChannel.open(
                    path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(path);
            throw e;
        }
    }

    /** Removes the files of processes that are no more. */
    static void removeStale(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, START + "*" + END)) {
            for (Path file : files) {
                Matcher matcher = NAME.matcher(file.getFileName().toString());
                if (matcher.matches()
                        && ProcessHandle.of(Long.parseLong(matcher.group(1))).isEmpty()) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException e) {
            // tidying up is no reason to fail: what is stale now is found again next time
            return;
        }
    }
}
