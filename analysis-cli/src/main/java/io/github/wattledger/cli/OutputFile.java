package io.github.wattledger.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** Puts a result into a file: whole, or not at all. */
final class OutputFile {
    private OutputFile() {}

    /**
     * Writes text as UTF-8, beside the target, and then moves it, so that a failed run leaves what was there before. A
     * folder that is not there is made. A link is followed; a pipe or device is written to as it is.
     *
     * @throws OutputFailure when it cannot be written, with one line for people
     */
    static void write(Path file, CharSequence text) throws OutputFailure {
        write(file, text.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static void write(Path file, byte[] content) throws OutputFailure {
        try {
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                Files.write(file, content);
                return;
            }
            Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
            makeFolder(target.toAbsolutePath().getParent());
            Path part = target.resolveSibling(
                    "." + target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
            try {
                Files.write(part, content, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                move(part, target);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (OutputFailure e) {
            throw e;
        } catch (IOException e) {
            throw new OutputFailure("cannot write " + file + ": " + reason(file, e), e);
        }
    }

    /**
     * Writes a report, as UTF-8, into a file or to standard output.
     *
     * @param target the file, or null for standard output
     * @throws OutputFailure when the file cannot be written, with one line for people
     */
    static void deliver(StringBuilder report, @Nullable Path target, PrintStream out) throws OutputFailure {
        byte[] bytes = report.toString().getBytes(StandardCharsets.UTF_8);
        if (target == null) {
            out.write(bytes, 0, bytes.length);
        } else {
            write(target, bytes);
        }
    }

    /**
     * Makes a folder, and those above it, where there is none.
     *
     * @throws OutputFailure when it cannot be made, with one line for people
     */
    static void makeFolder(@Nullable Path folder) throws OutputFailure {
        if (folder == null) {
            return;
        }
        try {
            Files.createDirectories(folder);
        } catch (FileAlreadyExistsException e) {
            throw new OutputFailure("cannot make the folder " + folder + ": " + e.getFile() + " is a file", e);
        } catch (AccessDeniedException e) {
            throw new OutputFailure("cannot make the folder " + folder + ": permission denied", e);
        } catch (IOException e) {
            throw new OutputFailure("cannot make the folder " + folder + ": " + e.getMessage(), e);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static String reason(Path file, IOException e) {
        if (Files.isDirectory(file)) {
            return "it is a folder";
        }
        if (e instanceof NoSuchFileException) {
            return "its folder does not exist";
        }
        if (e instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (e instanceof FileSystemException cause && cause.getReason() != null) {
            return cause.getReason();
        }
        String message = e.getMessage();
        return message == null ? e.getClass().getSimpleName() : message;
    }
}
