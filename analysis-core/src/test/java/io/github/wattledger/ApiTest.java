package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The contract of docs/embedding.md, "What is promised": which types a program may call, that everything they show is a
 * public result, and which public types are the library's own.
 */
class ApiTest {
    private static final String ROOT = ArchitectureTest.ROOT;
    private static final Path PAGE = Path.of("..", "docs", "embedding.md");

    private final JavaClasses project =
            new ClassFileImporter().withImportOption(new DoNotIncludeTests()).importPackages(ROOT);

    @Test
    void everyPublicTypeIsCalledOrAResultOrNamedAsTheLibrarysOwn() throws IOException {
        Set<String> called = new TreeSet<>(listed("called"));
        called.addAll(listed("metrics"));
        called.addAll(listed("plugged"));
        Set<String> internal = listed("internal");
        Set<String> api = reachedFrom(called);
        Set<String> all = project.stream()
                .filter(each -> each.isTopLevelClass() && isPublic(each))
                .map(ApiTest::shortName)
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(all).as("public types").containsAll(called).containsAll(internal);
        Set<String> neither = new TreeSet<>(all);
        neither.removeAll(api);
        assertThat(neither)
                .as("public types that no promised one shows; make them package-private, or name them in the page")
                .isEqualTo(internal);
    }

    /** What may be called does not grow by itself. */
    @Test
    void whatMayBeCalledStaysAHandful() throws IOException {
        assertThat(listed("called")).hasSizeBetween(30, 42);
        assertThat(listed("metrics")).hasSizeBetween(15, 24);
        assertThat(listed("plugged")).hasSizeBetween(5, 12);
    }

    /** The names in a table of the page, each with its package below the root, for instance {@code load.Work}. */
    private static Set<String> listed(String table) throws IOException {
        String page = Files.readString(PAGE);
        String mark = "<!-- types " + table + " -->";
        assertThat(page).contains(mark);
        Set<String> names = new TreeSet<>();
        page.substring(page.indexOf(mark) + mark.length())
                .lines()
                .skip(1)
                .takeWhile(line -> line.startsWith("|"))
                .skip(2)
                .forEach(line -> {
                    String[] cells = line.split("\\|", -1);
                    String inPackage = cells[1].replace("`", "").strip();
                    Pattern.compile(",")
                            .splitAsStream(cells[2])
                            .map(name -> name.replace("`", "").strip())
                            .forEach(name -> names.add(inPackage.equals("(root)") ? name : inPackage + "." + name));
                });
        return names;
    }

    /** These types and all of the library's that their public signatures show, directly or through others. */
    private Set<String> reachedFrom(Set<String> called) {
        Set<String> reached = new TreeSet<>();
        Deque<String> open = new ArrayDeque<>(called);
        while (!open.isEmpty()) {
            String name = open.pop();
            if (reached.add(name)) {
                JavaClass outermost = project.get(ROOT + "." + name);
                project.stream()
                        .filter(each -> isPublic(each) && outermost(each).equals(outermost))
                        .flatMap(this::shown)
                        .filter(each -> each.getName().startsWith(ROOT + "."))
                        .map(each -> shortName(outermost(each)))
                        .forEach(open::push);
            }
        }
        return reached;
    }

    /** The types in the public signatures of a type. */
    private Stream<JavaClass> shown(JavaClass type) {
        Stream<JavaClass> ofUnits = type.getCodeUnits().stream()
                .filter(unit -> unit.getModifiers().contains(JavaModifier.PUBLIC))
                .flatMap(ApiTest::ofUnit);
        Stream<JavaClass> ofFields = type.getFields().stream()
                .filter(field -> field.getModifiers().contains(JavaModifier.PUBLIC))
                .map(JavaField::getType)
                .flatMap(shown -> shown.getAllInvolvedRawTypes().stream());
        Stream<JavaClass> above = Stream.concat(type.getRawSuperclass().stream(), type.getRawInterfaces().stream())
                .filter(ApiTest::isPublic);
        return Stream.of(ofUnits, ofFields, above).flatMap(each -> each).map(JavaClass::getBaseComponentType);
    }

    private static Stream<JavaClass> ofUnit(JavaCodeUnit unit) {
        Stream<JavaType> types = Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream());
        return Stream.concat(
                types.flatMap(shown -> shown.getAllInvolvedRawTypes().stream()), unit.getExceptionTypes().stream());
    }

    private static boolean isPublic(JavaClass type) {
        return type.getModifiers().contains(JavaModifier.PUBLIC);
    }

    private static JavaClass outermost(JavaClass type) {
        JavaClass outermost = type;
        while (outermost.getEnclosingClass().isPresent()) {
            outermost = outermost.getEnclosingClass().get();
        }
        return outermost;
    }

    private static String shortName(JavaClass type) {
        return type.getName().substring(ROOT.length() + 1);
    }
}
