package io.github.wattledger.cli.fuzz;

import io.github.wattledger.cli.fuzz.WholePath.Fate;
import io.github.wattledger.cli.fuzz.WholePath.Result;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Sends many changed files through the whole program, in batches: each file through the commands of one ride, then the
 * batch through a season. What breaks a promise is written to a folder, with what was changed and the commands.
 */
final class FuzzRun {
    private static final int BATCH = 50;

    private static final int PROGRESS_EVERY = 5000;

    /** The processor time that no small file may take, all its commands together. */
    private static final double MOST_SECONDS = 30;

    private final FuzzRides rides;
    private final long seed;
    private final Path failures;
    private final Map<Fate, Integer> fates = new EnumMap<>(Fate.class);
    private final List<String> broken = new ArrayList<>();
    private int files;
    private int commands;
    private double slowestSeconds;
    private String slowest = "none";

    private FuzzRun(FuzzRides rides, long seed, Path failures) {
        this.rides = rides;
        this.seed = seed;
        this.failures = failures;
    }

    /**
     * What a run came to.
     *
     * @param fates how many files met which fate; a season counts only when it broke a promise
     * @param broken a line for each broken promise
     * @param commands how many commands were run
     * @param slowest the file that took longest, in seconds of processor time
     */
    record Tally(Map<Fate, Integer> fates, List<String> broken, int commands, String slowest) {}

    /**
     * Runs from a seed.
     *
     * @param failures the folder for what breaks a promise
     * @param threads how many batches at once
     */
    static Tally run(FuzzRides rides, long seed, int from, int executions, int threads, Path failures)
            throws IOException, InterruptedException {
        FuzzRun run = new FuzzRun(rides, seed, failures);
        AtomicInteger next = new AtomicInteger(from);
        ExecutorService executor = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> workers = new ArrayList<>();
            for (int i = 0; i < threads; i++) {
                workers.add(executor.submit(() -> {
                    run.work(next, from + executions);
                    return null;
                }));
            }
            for (Future<?> worker : workers) {
                worker.get();
            }
        } catch (ExecutionException e) {
            throw new IllegalStateException("the fuzzing itself failed", e.getCause());
        } finally {
            executor.shutdownNow();
        }
        return new Tally(run.fates, run.broken, run.commands, run.slowest);
    }

    private void work(AtomicInteger next, int end) throws IOException {
        Path folder = Files.createTempDirectory("fuzz");
        try {
            for (int first = next.getAndAdd(BATCH); first < end; first = next.getAndAdd(BATCH)) {
                batch(folder, first, Math.min(end, first + BATCH));
                empty(folder);
            }
        } finally {
            empty(folder);
            Files.delete(folder);
        }
    }

    private void batch(Path folder, int first, int end) throws IOException {
        Path season = Files.createDirectory(folder.resolve("season"));
        for (int execution = first; execution < end; execution++) {
            FuzzInput input = FuzzInput.of(rides, seed, execution);
            Path file = Files.write(season.resolve(input.name()), input.content());
            Path sound = Files.write(
                    folder.resolve("sound." + input.sound().extension()),
                    input.sound().file());
            long begun = processorNanos();
            Result result = WholePath.check(folder, file, sound, FuzzInput.random(~seed, execution));
            double seconds = (processorNanos() - begun) / 1e9;
            count(execution, input, result, seconds);
        }
        Path store = Files.createDirectory(folder.resolve("store"));
        Result result = WholePath.season(store, season, FuzzInput.random(~seed, -first - 1));
        countSeason(first, season, result);
    }

    private static long processorNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private synchronized void count(int execution, FuzzInput input, Result result, double seconds) throws IOException {
        fates.merge(result.fate(), 1, Integer::sum);
        commands += result.commands().size();
        if (++files % PROGRESS_EVERY == 0) {
            System.out.println(files + " files: " + fates);
        }
        List<String> lines = new ArrayList<>(result.broken());
        if (seconds > MOST_SECONDS) {
            lines.add("it takes " + seconds + " s of processor time");
        }
        if (seconds > slowestSeconds) {
            slowestSeconds = seconds;
            slowest = String.format(Locale.ROOT, "%.1f s, execution %d, %s", seconds, execution, input.changes());
        }
        if (!lines.isEmpty()) {
            Path folder = Files.createDirectories(failures.resolve(seed + "-" + execution));
            Files.write(folder.resolve(input.name()), input.content());
            Files.write(
                    folder.resolve("sound." + input.sound().extension()),
                    input.sound().file());
            List<String> about = new ArrayList<>(lines);
            about.add("changes: " + input.changes() + " of " + input.sound().name());
            about.addAll(result.commands());
            Files.write(folder.resolve("about.txt"), about);
            lines.forEach(line -> broken.add("execution " + execution + ": " + line));
        }
    }

    private synchronized void countSeason(int first, Path season, Result result) throws IOException {
        commands += result.commands().size();
        if (result.fate() == Fate.BROKEN) {
            fates.merge(Fate.BROKEN, 1, Integer::sum);
            Path folder = Files.createDirectories(failures.resolve(seed + "-season-" + first));
            try (var files = Files.list(season)) {
                for (Path file : files.toList()) {
                    Files.write(folder.resolve(String.valueOf(file.getFileName())), Files.readAllBytes(file));
                }
            }
            List<String> about = new ArrayList<>(result.broken());
            about.addAll(result.commands());
            Files.write(folder.resolve("about.txt"), about);
            result.broken().forEach(line -> broken.add("season of execution " + first + " on: " + line));
        }
    }

    private static void empty(Path folder) throws IOException {
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path each, java.io.IOException failure) throws IOException {
                if (!each.equals(folder)) {
                    Files.delete(each);
                }
                return FileVisitResult.CONTINUE;
            }
        });
    }

    /**
     * Runs and prints what it came to; fails when a promise was broken.
     *
     * @param arguments the number of executions, the seed, the number of the first execution, the threads, the folder
     *     for failures
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        int executions = Integer.parseInt(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        int from = Integer.parseInt(arguments[2]);
        int threads = Integer.parseInt(arguments[3]);
        Path failures = Path.of(arguments[4]);
        String real = System.getenv("WATTLEDGER_REAL_RIDES");
        List<Path> folders = new ArrayList<>(List.of(Path.of("..", "sample-rides")));
        if (real != null) {
            folders.add(Path.of(real));
        }
        long begun = System.nanoTime();
        Tally tally = run(FuzzRides.of(folders.toArray(new Path[0])), seed, from, executions, threads, failures);
        System.out.println(executions + " executions from seed " + seed + ", " + tally.commands() + " commands, "
                + (System.nanoTime() - begun) / 1_000_000_000 + " s: " + tally.fates());
        System.out.println("slowest: " + tally.slowest());
        tally.broken().forEach(System.out::println);
        if (!tally.broken().isEmpty()) {
            throw new IllegalStateException(tally.broken().size() + " promises broken; the files are in " + failures);
        }
    }
}
