package io.github.wattledger.testing;

import io.github.wattledger.Reviewer;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Type;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The signatures that a program may rest on, one line each, for a comparison with those of a release. Which they are says
 * "What is promised" in docs/embedding.md: of the types that are called all public members; of the others, which are
 * results, the accessors and constants; of the library's own types nothing.
 */
public final class ApiSignatures {
    /** The release whose signatures are kept. */
    public static final String BASELINE = "0.1.0";

    private static final String ROOT = Reviewer.class.getPackageName() + ".";

    private final Set<String> called;
    private final Set<String> internal;

    private ApiSignatures(Set<String> called, Set<String> internal) {
        this.called = called;
        this.internal = internal;
    }

    /** Writes the signatures as they are now: the folder of the pages, and the file to write. */
    public static void main(String[] arguments) throws IOException, URISyntaxException {
        Files.write(Path.of(arguments[1]), now(Path.of(arguments[0])));
    }

    /**
     * The signatures as they are now.
     *
     * @param docs the folder of the pages
     */
    public static SortedSet<String> now(Path docs) throws IOException, URISyntaxException {
        String page = Files.readString(docs.resolve("embedding.md"));
        Set<String> called = new TreeSet<>(listed(page, "called"));
        called.addAll(listed(page, "metrics"));
        called.addAll(listed(page, "plugged"));
        ApiSignatures signatures = new ApiSignatures(called, listed(page, "internal"));
        Path classes = Path.of(Reviewer.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        try (Stream<Path> files = Files.walk(classes)) {
            return files.map(file -> classes.relativize(file).toString().replace('\\', '/'))
                    .filter(file -> file.endsWith(".class") && !file.endsWith("-info.class"))
                    .map(file -> type(file.substring(0, file.length() - ".class".length())))
                    .filter(ApiSignatures::isVisible)
                    .flatMap(signatures::of)
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    /** The types in a table of the page; none where it has no such table, and then every type is one that is called. */
    private static Set<String> listed(String page, String table) {
        Set<String> names = new TreeSet<>();
        String mark = "<!-- types " + table + " -->";
        List<String> lines = page.contains(mark)
                ? page.substring(page.indexOf(mark) + mark.length())
                        .lines()
                        .skip(3)
                        .takeWhile(line -> line.startsWith("|"))
                        .toList()
                : List.of();
        for (String line : lines) {
            String[] cells = line.replace("`", "").replace(" ", "").split("\\|", -1);
            String prefix = ROOT + (cells[1].equals("(root)") ? "" : cells[1] + ".");
            Arrays.stream(cells[2].split(",")).forEach(name -> names.add(prefix + name));
        }
        return names;
    }

    private static Class<?> type(String file) {
        try {
            return Class.forName(file.replace('/', '.'), false, ApiSignatures.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new AssertionError(e);
        }
    }

    /** Public, as are all types around it. */
    private static boolean isVisible(Class<?> type) {
        return Modifier.isPublic(type.getModifiers())
                && !type.isAnonymousClass()
                && (type.getEnclosingClass() == null || isVisible(type.getEnclosingClass()));
    }

    private Stream<String> of(Class<?> type) {
        String outermost = type.getName().replaceAll("\\$.*", "");
        if (internal.contains(outermost)) {
            return Stream.of();
        }
        boolean isCalled = called.isEmpty() || called.contains(outermost);
        Stream<String> members = Stream.of(
                        Stream.of(type.getDeclaredFields())
                                .filter(ApiSignatures::isPublic)
                                .map(Field::toGenericString),
                        Stream.of(type.getDeclaredMethods())
                                .filter(method -> isPublic(method) && !method.isSynthetic() && !isOfEveryObject(method))
                                .filter(method -> isCalled || !Modifier.isStatic(method.getModifiers()))
                                .map(Method::toGenericString),
                        Stream.of(type.getDeclaredConstructors())
                                .filter(constructor -> isPublic(constructor) && isCalled && !type.isRecord())
                                .map(Constructor::toGenericString))
                .flatMap(each -> each);
        return Stream.concat(
                        Stream.of(declaration(type)),
                        members.map(member ->
                                type.getName() + ": " + withoutDetail(member).replace(" " + type.getName() + ".", " ")))
                .map(line -> line.replace(ROOT, "").replace("java.lang.", ""));
    }

    private static boolean isOfEveryObject(Method method) {
        return Stream.of(Object.class.getMethods())
                .anyMatch(each -> each.getName().equals(method.getName())
                        && Arrays.equals(each.getParameterTypes(), method.getParameterTypes()));
    }

    private static boolean isPublic(Member member) {
        return Modifier.isPublic(member.getModifiers());
    }

    /** Named by ourselves: what Java prints of a type differs from one JDK to the next. */
    private static String declaration(Class<?> type) {
        String kind = type.isRecord() ? "record" : type.isEnum() ? "enum" : type.isInterface() ? "interface" : "class";
        boolean isFinal = Modifier.isFinal(type.getModifiers()) && kind.equals("class");
        String above = !kind.equals("class") || type.getSuperclass() == Object.class
                ? ""
                : " extends " + type.getGenericSuperclass().getTypeName();
        String interfaces = Stream.of(type.getGenericInterfaces())
                .map(Type::getTypeName)
                .sorted()
                .collect(Collectors.joining(", "));
        return (isFinal ? "final " : type.isSealed() ? "sealed " : "") + kind + " " + type.getName()
                + Arrays.toString(type.getTypeParameters()).replace("[]", "") + above
                + (interfaces.isEmpty() ? "" : " implements " + interfaces);
    }

    /** What no caller sees. A final method of a final class is one, too. */
    private static String withoutDetail(String member) {
        return member.replaceAll("\\b(synchronized|native|strictfp) ", "")
                .replaceAll("^public (static )?final (?=.*\\()", "public $1");
    }
}
