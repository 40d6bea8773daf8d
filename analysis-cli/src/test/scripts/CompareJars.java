import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Stream;

/**
 * Runs the same commands with two jars and prints what differs. Both jars are loaded once, each apart from the other,
 * because each start of a process costs more than half a second.
 *
 * <p>A difference has a name, {@code COMMAND PLACE}. The place is {@code exit status}, {@code error line N: TEXT}, a
 * path such as {@code $.load.workKJ} in JSON, or {@code line N: TEXT} elsewhere. The text and the number are those of
 * the old line, or of the new one where no old one stands against it. {@code --ignore} is searched in this name.
 * Nothing is rounded or sorted before the comparison. What a program prints past the two streams it is given goes
 * unseen.
 *
 * <p>Exit status: 0 equal, 1 something differs, 2 the comparison could not be made.
 */
public final class CompareJars {
    private static final Pattern RECORDING = Pattern.compile("(?i).*\\.(fit|gpx|csv|gz|zip)");

    /** Stands in a command for the folder of the sample rides. */
    private static final String SAMPLES = "SAMPLES/";

    /** Stands in a command for a folder that is empty before the first command of a job. */
    private static final String EMPTY_FOLDER = "EMPTY/";

    private static final List<String> COMMANDS_OF_A_FILE =
            List.of("review --format json", "review", "review --format html", "inspect --format json");

    /** The second season is read from the store that the first one wrote. */
    private static final List<String> COMMANDS_OF_A_FOLDER = List.of(
            "season --format json --store EMPTY/season.sqlite", "season --format text --store EMPTY/season.sqlite");

    private static final List<String> FIXED_COMMANDS = List.of(
            "compare SAMPLES/even-paced.fit SAMPLES/over-hard-start.fit",
            "compare SAMPLES/even-paced.fit SAMPLES/over-hard-start.fit --format json",
            "compare SAMPLES/over-hard-start.fit SAMPLES/even-paced.fit --from 10km --to 90km --format html",
            "what-if --distance 200mi --power 200 --with-position aero-bars --share 25%",
            "what-if --distance 160km --power 220 --ascent 2400 --temperature 25 --with-mass -3 --format json",
            "what-if SAMPLES/even-paced.fit --with-power +5%",
            "what-if SAMPLES/over-hard-start.fit --mass 70 --with-drag-area -10% --format json",
            "review SAMPLES/over-hard-start.fit --threshold-power 240 --mass 70 --effort race --format json",
            "review SAMPLES/season/2026-05-02-second-race.fit.gz --rider SAMPLES/season/rider.toml --format json");

    private final Settings settings;
    private final Path work;
    private final Jar oldJar;
    private final Jar newJar;
    private final Map<Integer, Integer> commandsByStatus = new TreeMap<>();
    private int commands;
    private int differingCommands;
    private int ignored;

    private CompareJars(Settings settings) throws IOException, ReflectiveOperationException {
        this.settings = settings;
        this.work = Files.createTempDirectory("compare-jars");
        this.oldJar = Jar.load(settings.oldJar());
        this.newJar = Jar.load(settings.newJar());
    }

    /** The first argument is the folder of the sample rides, which the script knows. */
    public static void main(String[] args) throws InterruptedException {
        int status;
        try {
            status = new CompareJars(Settings.of(args)).run() ? 0 : 1;
        } catch (IllegalArgumentException e) {
            System.err.println(e.getMessage());
            status = 2;
        } catch (IOException | ReflectiveOperationException | ExecutionException e) {
            System.err.println("compare-jars.sh: the comparison stopped: " + e);
            status = 2;
        }
        System.exit(status);
    }

    /** Whether nothing differs. */
    private boolean run() throws IOException, ExecutionException, InterruptedException {
        TreeSet<Path> files = new TreeSet<>();
        for (Path folder : settings.folders()) {
            files.addAll(recordings(folder));
        }
        List<Job> jobs = new ArrayList<>();
        for (Path folder : settings.folders()) {
            jobs.add(new Job(folder.toString(), COMMANDS_OF_A_FOLDER));
        }
        FIXED_COMMANDS.forEach(command -> jobs.add(new Job("", List.of(command))));
        files.forEach(file -> jobs.add(new Job(file.toString(), COMMANDS_OF_A_FILE)));

        ExecutorService pool = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        try {
            List<Future<List<Outcome>>> running = new ArrayList<>();
            for (int i = 0; i < jobs.size(); i++) {
                Job job = jobs.get(i);
                Path folder = work.resolve("job-" + i);
                running.add(pool.submit(() -> compare(job, folder)));
            }
            for (Future<List<Outcome>> job : running) {
                job.get().forEach(this::report);
            }
        } finally {
            pool.shutdownNow();
        }
        System.out.printf(
                "%d files, %d commands, %d differences%s; commands by exit status of the old jar: %s%n",
                files.size(),
                commands,
                differingCommands,
                settings.ignore() == null ? "" : ", " + ignored + " places ignored",
                commandsByStatus);
        return differingCommands == 0;
    }

    private static List<Path> recordings(Path folder) throws IOException {
        try (Stream<Path> below = Files.walk(folder)) {
            List<Path> found = below.filter(Files::isRegularFile)
                    .filter(file -> RECORDING.matcher(file.toString()).matches())
                    .toList();
            if (found.isEmpty()) {
                throw new IllegalArgumentException("compare-jars.sh: " + folder
                        + ": no recording lies in it (.fit, .gpx, .csv, .gz, .zip); give a folder that has some");
            }
            return found;
        }
    }

    private List<Outcome> compare(Job job, Path folder) throws IOException, ReflectiveOperationException {
        List<Result> before = run(oldJar, job, folder);
        List<Result> after = run(newJar, job, folder);
        List<Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < before.size(); i++) {
            String command = job.commands().get(i);
            boolean json = command.contains("--format json");
            List<Difference> differences = Result.differences(before.get(i), after.get(i), json);
            if (job.subject().isEmpty()
                    && before.get(i).status() != 0
                    && after.get(i).status() != 0) {
                differences.add(new Difference(
                        "neither jar can run it",
                        before.get(i).err(),
                        after.get(i).err()));
            }
            outcomes.add(new Outcome(job.subject(), command, before.get(i).status(), differences));
        }
        return outcomes;
    }

    private List<Result> run(Jar jar, Job job, Path folder) throws IOException, ReflectiveOperationException {
        empty(folder);
        List<Result> results = new ArrayList<>();
        for (String command : job.commands()) {
            List<String> words = new ArrayList<>();
            for (String word : command.split(" ")) {
                words.add(word.replace(SAMPLES, settings.samples() + "/").replace(EMPTY_FOLDER, folder + "/"));
            }
            if (!job.subject().isEmpty()) {
                words.add(1, job.subject());
            }
            results.add(jar.run(words));
        }
        empty(folder);
        return results;
    }

    /** Makes the folder, or deletes the files in it. */
    private static void empty(Path folder) throws IOException {
        Files.createDirectories(folder);
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
    }

    private void report(Outcome outcome) {
        commands++;
        commandsByStatus.merge(outcome.status(), 1, Integer::sum);
        Pattern ignore = settings.ignore();
        List<Difference> counted = outcome.differences().stream()
                .filter(d -> ignore == null
                        || !ignore.matcher(outcome.command() + " " + d.place()).find())
                .toList();
        ignored += outcome.differences().size() - counted.size();
        if (counted.isEmpty()) {
            return;
        }
        differingCommands++;
        String subject = outcome.subject().isEmpty() ? "" : outcome.subject() + ": ";
        for (Difference d : settings.all() ? counted : counted.subList(0, 1)) {
            String more = settings.all() || counted.size() == 1 ? "" : " (and " + (counted.size() - 1) + " more)";
            System.out.println(subject + outcome.command() + " " + d.shown() + more);
        }
    }
}

record Settings(Path samples, Path oldJar, Path newJar, List<Path> folders, boolean all, Pattern ignore) {
    private static final String USAGE = """
            Usage: compare-jars.sh [--all] [--ignore PATTERN] OLD.jar NEW.jar FOLDER...
              --all             Print every difference of a command, not only its first.
              --ignore PATTERN  Leave out the differences in whose name, 'COMMAND PLACE', this
                                regular expression is found, for instance
                                '^review --format json \\$\\.load\\.workKJ$'.
              FOLDER            Folders of rides. The folders below them are read as well.""";

    static Settings of(String[] args) {
        List<Path> paths = new ArrayList<>();
        boolean all = false;
        Pattern ignore = null;
        for (int i = 0; i < args.length; i++) {
            if (args[i].equals("--all")) {
                all = true;
            } else if (args[i].equals("--ignore") && i + 1 < args.length && ignore == null) {
                ignore = pattern(args[++i]);
            } else if (args[i].startsWith("-")) {
                throw new IllegalArgumentException(
                        "compare-jars.sh: " + args[i] + ": unknown, given twice or without its value\n" + USAGE);
            } else {
                paths.add(Path.of(args[i]).toAbsolutePath().normalize());
            }
        }
        if (paths.size() < 4) {
            throw new IllegalArgumentException(USAGE);
        }
        for (Path jar : paths.subList(1, 3)) {
            if (!Files.isRegularFile(jar)) {
                throw new IllegalArgumentException("compare-jars.sh: " + jar + ": no such jar; build it first");
            }
        }
        List<Path> folders = paths.subList(3, paths.size());
        for (Path folder : folders) {
            if (!Files.isDirectory(folder)) {
                throw new IllegalArgumentException("compare-jars.sh: " + folder + ": no such folder");
            }
        }
        return new Settings(paths.get(0), paths.get(1), paths.get(2), folders, all, ignore);
    }

    private static Pattern pattern(String text) {
        try {
            return Pattern.compile(text);
        } catch (PatternSyntaxException e) {
            throw new IllegalArgumentException(
                    "compare-jars.sh: --ignore " + text + ": no regular expression: " + e.getDescription(), e);
        }
    }
}

/** Commands that one thread runs one after the other, on a file or a folder, or on what the commands name. */
record Job(String subject, List<String> commands) {}

record Outcome(String subject, String command, int status, List<Difference> differences) {}

/** A program within a class loader of its own, which sees nothing but the jar and the platform. */
record Jar(ClassLoader loader, Method method) {
    static Jar load(Path jar) throws IOException, ReflectiveOperationException {
        URL[] place = {jar.toUri().toURL()};
        ClassLoader loader = new URLClassLoader(place, ClassLoader.getPlatformClassLoader());
        Class<?> main = loader.loadClass("io.github.wattledger.cli.Main");
        return new Jar(loader, main.getMethod("run", String[].class, PrintStream.class, PrintStream.class));
    }

    Result run(List<String> words) throws ReflectiveOperationException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream outStream = new PrintStream(out, false, StandardCharsets.UTF_8);
        PrintStream errStream = new PrintStream(err, false, StandardCharsets.UTF_8);
        // Services are looked up through the thread.
        Thread.currentThread().setContextClassLoader(loader);
        Object status;
        try {
            status = method.invoke(null, words.toArray(String[]::new), outStream, errStream);
        } catch (InvocationTargetException e) {
            throw new IllegalStateException(words + ": " + e.getCause(), e);
        }
        outStream.flush();
        errStream.flush();
        return new Result((Integer) status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}

record Result(int status, String out, String err) {
    static List<Difference> differences(Result before, Result after, boolean json) {
        List<Difference> found = new ArrayList<>();
        if (before.status != after.status) {
            found.add(new Difference("exit status", "" + before.status, "" + after.status));
        }
        if (!before.err.equals(after.err)) {
            found.addAll(Lines.differences("error line ", before.err, after.err));
        }
        if (before.out.equals(after.out)) {
            return found;
        }
        List<Difference> values = json ? Json.differences(before.out, after.out) : List.of();
        // The values are equal where only the order or the layout differs; broken JSON has none.
        found.addAll(values.isEmpty() ? Lines.differences("line ", before.out, after.out) : values);
        return found;
    }
}

/** A value that differs; null is one that is not there. */
record Difference(String place, String before, String after) {
    private static final int LEAD_CHARACTERS = 30;
    private static final int MOST_CHARACTERS = 100;

    String shown() {
        int same = before == null || after == null
                ? 0
                : Math.max(0, Arrays.mismatch(before.toCharArray(), after.toCharArray()));
        int start = same <= LEAD_CHARACTERS ? 0 : same - LEAD_CHARACTERS;
        // The text of a line follows anyway.
        String name = place.replaceFirst("(line \\d+): (?s:.*)", "$1");
        return name + ": " + excerpt(before, start) + " -> " + excerpt(after, start);
    }

    private static String excerpt(String text, int start) {
        if (text == null) {
            return "(absent)";
        }
        int end = Math.min(text.length(), start + MOST_CHARACTERS);
        String part = text.substring(Math.min(start, end), end).replaceAll("\\p{Cntrl}", " ");
        return (start > 0 ? "..." : "") + part + (end < text.length() ? "..." : "");
    }
}

/** Compares lines: what both texts have in the same order is set aside, the rest is paired. */
final class Lines {
    private static final long MOST_PAIRS = 16_000_000;

    private Lines() {}

    static List<Difference> differences(String label, String before, String after) {
        String[] a = before.split("\n", -1);
        String[] b = after.split("\n", -1);
        int[][] common = (long) a.length * b.length <= MOST_PAIRS ? common(a, b) : null;
        List<Difference> found = new ArrayList<>();
        int i = 0;
        int j = 0;
        while (i < a.length || j < b.length) {
            int startOfOld = i;
            int startOfNew = j;
            while ((i < a.length || j < b.length) && !isEqual(a, i, b, j)) {
                // Without a table both sides go on together.
                boolean takesOld =
                        i < a.length && (j == b.length || common == null || common[i + 1][j] >= common[i][j + 1]);
                boolean takesNew = j < b.length && (!takesOld || common == null);
                i += takesOld ? 1 : 0;
                j += takesNew ? 1 : 0;
            }
            for (int k = 0; k < Math.max(i - startOfOld, j - startOfNew); k++) {
                String old = startOfOld + k < i ? a[startOfOld + k] : null;
                String now = startOfNew + k < j ? b[startOfNew + k] : null;
                int line = 1 + k + (old == null ? startOfNew : startOfOld);
                found.add(new Difference(label + line + ": " + (old == null ? now : old), old, now));
            }
            i++; // past the equal lines, or past both ends
            j++;
        }
        return found;
    }

    private static boolean isEqual(String[] a, int i, String[] b, int j) {
        return i < a.length && j < b.length && a[i].equals(b[j]);
    }

    /** The most lines that a from i on and b from j on have in common, in the same order. */
    private static int[][] common(String[] a, String[] b) {
        int[][] most = new int[a.length + 1][b.length + 1];
        for (int i = a.length - 1; i >= 0; i--) {
            for (int j = b.length - 1; j >= 0; j--) {
                most[i][j] = a[i].equals(b[j]) ? most[i + 1][j + 1] + 1 : Math.max(most[i + 1][j], most[i][j + 1]);
            }
        }
        return most;
    }
}

/** Compares JSON value by value; numbers and strings as they are written. */
final class Json {
    private static final Pattern PLAIN_NAME = Pattern.compile("\\w+");

    private final String text;
    private final Map<String, String> valueByPath = new LinkedHashMap<>();
    private int at;

    private Json(String text) {
        this.text = text;
    }

    /** None where a text is no JSON. */
    static List<Difference> differences(String before, String after) {
        List<Difference> found = new ArrayList<>();
        try {
            Map<String, String> old = values(before);
            Map<String, String> now = values(after);
            old.forEach((path, value) -> {
                if (!value.equals(now.get(path))) {
                    found.add(new Difference(path, value, now.get(path)));
                }
            });
            now.forEach((path, value) -> {
                if (!old.containsKey(path)) {
                    found.add(new Difference(path, null, value));
                }
            });
        } catch (NotJson e) {
            return List.of();
        }
        return found;
    }

    private static Map<String, String> values(String text) throws NotJson {
        Json json = new Json(text);
        json.value("$");
        json.space();
        if (json.at < text.length()) {
            throw new NotJson();
        }
        return json.valueByPath;
    }

    private void value(String path) throws NotJson {
        space();
        switch (peek()) {
            case '{' -> object(path);
            case '[' -> array(path);
            case '"' -> leaf(path, string());
            default -> leaf(path, word());
        }
    }

    private void object(String path) throws NotJson {
        at++;
        if (closes('}')) {
            leaf(path, "{}");
            return;
        }
        do {
            space();
            String quoted = string();
            String name = quoted.substring(1, quoted.length() - 1);
            space();
            if (peek() != ':') {
                throw new NotJson();
            }
            at++;
            value(path + (PLAIN_NAME.matcher(name).matches() ? "." + name : "[" + quoted + "]"));
        } while (continues('}'));
    }

    private void array(String path) throws NotJson {
        at++;
        if (closes(']')) {
            leaf(path, "[]");
            return;
        }
        int index = 0;
        do {
            value(path + "[" + index++ + "]");
        } while (continues(']'));
    }

    private void leaf(String path, String value) throws NotJson {
        if (valueByPath.put(path, value) != null) {
            throw new NotJson(); // one name twice: a value would go unseen
        }
    }

    private boolean closes(char end) throws NotJson {
        space();
        if (peek() != end) {
            return false;
        }
        at++;
        return true;
    }

    private boolean continues(char end) throws NotJson {
        if (closes(end)) {
            return false;
        }
        if (peek() != ',') {
            throw new NotJson();
        }
        at++;
        return true;
    }

    private String string() throws NotJson {
        if (peek() != '"') {
            throw new NotJson();
        }
        int start = at++;
        while (peek() != '"') {
            at += peek() == '\\' ? 2 : 1;
        }
        at++;
        return text.substring(start, at);
    }

    /** A number, true, false or null. */
    private String word() throws NotJson {
        int start = at;
        while (at < text.length() && "+-.".indexOf(text.charAt(at)) >= 0
                || at < text.length() && Character.isLetterOrDigit(text.charAt(at))) {
            at++;
        }
        if (at == start) {
            throw new NotJson();
        }
        return text.substring(start, at);
    }

    private void space() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    private char peek() throws NotJson {
        if (at >= text.length()) {
            throw new NotJson();
        }
        return text.charAt(at);
    }
}

final class NotJson extends Exception {
    private static final long serialVersionUID = 1;
}
