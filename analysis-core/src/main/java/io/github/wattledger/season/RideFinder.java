package io.github.wattledger.season;

import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * Finds the files that may be rides: those whose name ends as recordings and archives do, or has no ending. What they
 * are is then decided by their content; by their endings, photographs and notes are never opened.
 */
final class RideFinder {
    /** Why a file is skipped whose name this locale cannot express. */
    static final String INEXPRESSIBLE =
            "the name has letters that the locale of this run cannot express; run in a UTF-8 locale, for instance with"
                    + " LC_ALL=C.UTF-8";

    private final Set<String> endings = RideFiles.fileEndings();
    private final TreeMap<String, FoundFile> files = new TreeMap<>();
    private final List<SkippedFile> skipped = new ArrayList<>();
    private final boolean severalRoots;

    private RideFinder(boolean severalRoots) {
        this.severalRoots = severalRoots;
    }

    /** What was found. */
    record Found(List<FoundFile> files, List<SkippedFile> skipped) {}

    /**
     * Walks folders; a root that is a file is taken as it is. Links are followed, hidden files and folders left out.
     *
     * @throws UnreadableRideException when a root is not there; its message is one line that begins with it
     */
    static Found find(Collection<Path> roots) throws UnreadableRideException {
        RideFinder finder = new RideFinder(roots.size() > 1);
        for (Path root : roots) {
            finder.walk(root);
        }
        return new Found(List.copyOf(finder.files.values()), finder.skipped);
    }

    private void walk(Path root) throws UnreadableRideException {
        if (!Files.exists(root)) {
            throw new UnreadableRideException(Reason.NO_SUCH_FILE, root + ": there is no such folder; check the path");
        }
        try {
            Files.walkFileTree(root, EnumSet.of(FileVisitOption.FOLLOW_LINKS), Integer.MAX_VALUE, new Visitor(root));
        } catch (IOException e) {
            throw new UnreadableRideException(
                    Reason.NOT_ACCESSIBLE, root + ": could not be read (" + e.getMessage() + ")", e);
        }
    }

    /**
     * Whether the name of a file survives as text. In a locale of ASCII alone other letters are lost, so that two files
     * may seem to have one name, and the store cannot find a file again by its path.
     */
    private static boolean isExpressible(Path path) {
        try {
            return Path.of(path.toString()).equals(path);
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static boolean isHidden(Path path) {
        Path name = path.getFileName();
        return name != null && name.toString().startsWith(".");
    }

    private boolean mayBeRide(String fileName) {
        int point = fileName.lastIndexOf('.');
        return point < 0 || endings.contains(fileName.substring(point + 1).toLowerCase(Locale.ROOT));
    }

    private final class Visitor extends SimpleFileVisitor<Path> {
        private final Path root;

        Visitor(Path root) {
            this.root = root;
        }

        @Override
        public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
            if (!isExpressible(folder)) {
                skipped.add(new SkippedFile(name(folder), INEXPRESSIBLE));
                return FileVisitResult.SKIP_SUBTREE;
            }
            return !folder.equals(root) && isHidden(folder) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            boolean isRoot = file.equals(root);
            if (!isExpressible(file)) {
                skipped.add(new SkippedFile(name(file), INEXPRESSIBLE));
                return FileVisitResult.CONTINUE;
            }
            if (attributes.isRegularFile()
                    && (isRoot || (!isHidden(file) && mayBeRide(String.valueOf(file.getFileName()))))) {
                Path absolute = file.toAbsolutePath().normalize();
                files.putIfAbsent(
                        absolute.toString(),
                        new FoundFile(
                                absolute,
                                name(file),
                                attributes.size(),
                                attributes.lastModifiedTime().to(TimeUnit.NANOSECONDS)));
            }
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException e) {
            // A link that leads back to a folder above leads to nothing new.
            if (!(e instanceof FileSystemLoopException)) {
                String reason = e instanceof AccessDeniedException
                        ? "no permission to read it; check its owner and mode"
                        : "could not be read (" + e.getMessage() + ")";
                skipped.add(new SkippedFile(name(file), reason));
            }
            return FileVisitResult.CONTINUE;
        }

        private String name(Path file) {
            Path below = root.relativize(file);
            String name = file.equals(root)
                    ? String.valueOf(file.getFileName())
                    : below.toString().replace(file.getFileSystem().getSeparator(), "/");
            return severalRoots && !file.equals(root) ? root.toString().replace('\\', '/') + "/" + name : name;
        }
    }
}
