// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Writes output files so that nobody ever sees half of one: the content goes into a temporary file beside the
 * target, is forced to the disk and then takes the target's name in one step. Whatever fails, the temporary file is
 * removed and an older target stays as it was. A target that is no regular file (a device, a pipe) is written in
 * place.
 */
public final class OutputFile {
    private static final int BUFFER_BYTES = 1 << 16;
    private static final Pattern TEMPORARY = Pattern.compile("\\..+\\.(\\d+)-\\d+\\.part");

    /** Writes the content of a file. */
    @FunctionalInterface
    public interface Content {
        /**
         * Writes everything; the stream is buffered and is closed by the caller.
         *
         * @throws IOException from the stream, or because what is written could not be read
         */
        void writeTo(OutputStream stream) throws IOException;
    }

    private OutputFile() {}

    /**
     * Writes one file.
     *
     * @param target replaced if it exists
     * @param content writes the content; may throw {@link CancelledException}
     * @throws CannotCreateException if the file cannot be created or written
     * @throws IOException what {@code content} threw for another reason
     */
    public static void write(Path target, Content content) throws IOException {
        if (Files.isDirectory(target)) {
            throw new CannotCreateException(target, "it is a folder; name a file in it");
        }
        if (Files.exists(target) && !Files.isRegularFile(target)) {
            writeInPlace(target, content);
            return;
        }
        Path real = realPath(target);
        removeStale(real);
        Path temporary = temporaryFor(real);
        boolean moved = false;
        try {
            writeTemporary(target, temporary, content);
            move(target, temporary, real);
            moved = true;
        } finally {
            if (!moved) {
                Files.deleteIfExists(temporary);
            }
        }
    }

    // a symbolic link stays a link: what it points to is replaced
    private static Path realPath(Path target) throws IOException {
        try {
            return Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
        } catch (IOException e) {
            throw new CannotCreateException(target, e);
        }
    }

    private static Path temporaryFor(Path real) {
        String name =
                "." + real.getFileName() + "." + ProcessHandle.current().pid() + "-" + System.nanoTime() + ".part";
        return real.resolveSibling(name);
    }

    private static void writeInPlace(Path target, Content content) throws IOException {
        try (FileChannel channel = open(target, target, StandardOpenOption.WRITE);
                OutputStream stream = buffered(target, channel)) {
            content.writeTo(stream);
        }
    }

    private static void writeTemporary(Path target, Path temporary, Content content) throws IOException {
        try (FileChannel channel = open(target, temporary, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            lock(channel);
            OutputStream stream = buffered(target, channel);
            content.writeTo(stream);
            stream.flush();
            force(target, channel);
        }
    }

    private static FileChannel open(Path target, Path file, StandardOpenOption... options) throws IOException {
        try {
            return FileChannel.open(file, options);
        } catch (IOException e) {
            throw new CannotCreateException(target, e);
        }
    }

    // tells other processes that the file is not stale; it goes with the channel
    private static void lock(FileChannel channel) {
        try {
            channel.tryLock();
        } catch (IOException e) {
            // a file system without locks: the process id in the name must do
            return;
        }
    }

    private static void force(Path target, FileChannel channel) throws IOException {
        try {
            channel.force(true);
        } catch (IOException e) {
            throw new CannotCreateException(target, e);
        }
    }

    private static void move(Path target, Path temporary, Path real) throws IOException {
        try {
            try {
                Files.move(temporary, real, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(temporary, real, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException e) {
            throw new CannotCreateException(target, e);
        }
    }

    private static OutputStream buffered(Path target, FileChannel channel) {
        return new BufferedOutputStream(new TargetStream(target, channel), BUFFER_BYTES);
    }

    /** Tells a full disk from trouble in reading what is to be written. */
    private static final class TargetStream extends OutputStream {
        private final Path target;
        private final FileChannel channel;

        TargetStream(Path target, FileChannel channel) {
            this.target = target;
            this.channel = channel;
        }

        @Override
        public void write(int value) throws IOException {
            write(new byte[] {(byte) value}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            ByteBuffer buffer = ByteBuffer.wrap(bytes, offset, length);
            try {
                while (buffer.hasRemaining()) {
                    channel.write(buffer);
                }
            } catch (IOException e) {
                throw new CannotCreateException(target, e);
            }
        }
    }

    private static void removeStale(Path real) {
        Path folder = real.getParent();
        String start = "." + real.getFileName() + ".";
        if (folder == null || !Files.isDirectory(folder)) {
            return;
        }
        try (DirectoryStream<Path> files = Files.newDirectoryStream(
                folder, file -> file.getFileName().toString().startsWith(start))) {
            for (Path file : files) {
                if (isStale(file)) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException e) {
            // tidying up is no reason to fail: what is stale now is found again next time
            return;
        }
    }

    private static boolean isStale(Path file) {
        Matcher matcher = TEMPORARY.matcher(file.getFileName().toString());
        if (!matcher.matches() || isAlive(matcher.group(1))) {
            return false;
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
                FileLock lock = channel.tryLock()) {
            return lock != null;
        } catch (IOException | OverlappingFileLockException e) {
            return false;
        }
    }

    private static boolean isAlive(String processId) {
        try {
            return ProcessHandle.of(Long.parseLong(processId)).isPresent();
        } catch (NumberFormatException e) {
            return true;
        }
    }
}
