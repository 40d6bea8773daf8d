package io.github.wattledger;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.conditions.ArchPredicates.are;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.io.Serializable;
import java.util.Map;

/** Which package may see which, and what the numbers may not touch. */
@AnalyzeClasses(packages = ArchitectureTest.ROOT, importOptions = DoNotIncludeTests.class)
class ArchitectureTest {
    static final String ROOT = "io.github.wattledger";

    private static final String[] NUMBERS = {
        ROOT + ".ride..",
        ROOT + ".rider..",
        ROOT + ".load..",
        ROOT + ".power..",
        ROOT + ".history..",
        ROOT + ".course..",
        ROOT + ".rig..",
        ROOT + ".bunch..",
        ROOT + ".replay..",
        ROOT + ".compare..",
        ROOT + ".pacing..",
        ROOT + ".energy..",
        ROOT + ".plan.."
    };

    // spotless:off
    @ArchTest
    static final ArchRule dataMovesLeftToRight = layeredArchitecture().consideringOnlyDependenciesInLayers()
            .layer("cancel").definedBy(ROOT + ".cancel..")
            .layer("ride").definedBy(ROOT + ".ride..")
            .layer("rider").definedBy(ROOT + ".rider..")
            .layer("read").definedBy(ROOT + ".read..")
            .layer("clean").definedBy(ROOT + ".clean..")
            .layer("load").definedBy(ROOT + ".load..")
            .layer("power").definedBy(ROOT + ".power..")
            .layer("history").definedBy(ROOT + ".history..")
            .layer("course").definedBy(ROOT + ".course..")
            .layer("rig").definedBy(ROOT + ".rig..")
            .layer("bunch").definedBy(ROOT + ".bunch..")
            .layer("intake").definedBy(ROOT + ".intake..")
            .layer("replay").definedBy(ROOT + ".replay..")
            .layer("compare").definedBy(ROOT + ".compare..")
            .layer("pacing").definedBy(ROOT + ".pacing..")
            .layer("energy").definedBy(ROOT + ".energy..")
            .layer("plan").definedBy(ROOT + ".plan..")
            .layer("review").definedBy(ROOT)
            .layer("season").definedBy(ROOT + ".season..")
            .layer("table").definedBy(ROOT + ".table..")
            .layer("json").definedBy(ROOT + ".json..")
            .whereLayer("cancel").mayNotAccessAnyLayer()
            .whereLayer("ride").mayNotAccessAnyLayer()
            .whereLayer("rider").mayOnlyAccessLayers("ride")
            .whereLayer("read").mayOnlyAccessLayers("cancel", "ride")
            .whereLayer("clean").mayOnlyAccessLayers("ride")
            .whereLayer("load").mayOnlyAccessLayers("ride", "rider")
            .whereLayer("power").mayOnlyAccessLayers("ride", "rider", "load")
            .whereLayer("history").mayOnlyAccessLayers("ride", "rider", "power", "rig")
            .whereLayer("course").mayOnlyAccessLayers("ride", "rider", "load")
            .whereLayer("rig").mayOnlyAccessLayers("ride", "rider", "course")
            .whereLayer("bunch").mayOnlyAccessLayers("ride", "course", "rig")
            .whereLayer("intake").mayOnlyAccessLayers(
                    "cancel", "ride", "rider", "read", "clean", "load", "power", "history", "rig")
            .whereLayer("replay").mayOnlyAccessLayers(
                    "ride", "rider", "read", "clean", "history", "course", "rig", "intake")
            .whereLayer("compare").mayOnlyAccessLayers("ride", "read", "course", "intake")
            .whereLayer("pacing").mayOnlyAccessLayers(
                    "cancel", "ride", "rider", "load", "power", "course", "rig", "bunch", "replay")
            .whereLayer("energy").mayOnlyAccessLayers("ride", "rider", "pacing")
            .whereLayer("plan").mayOnlyAccessLayers(
                    "ride", "rider", "load", "power", "history", "course", "rig", "intake", "replay", "pacing",
                    "energy")
            .whereLayer("review").mayOnlyAccessLayers(
                    "cancel", "ride", "rider", "read", "clean", "load", "power", "history", "course", "rig", "intake", "replay",
                    "compare", "pacing", "energy", "plan")
            .whereLayer("season").mayOnlyBeAccessedByLayers("table", "json")
            .whereLayer("table").mayNotBeAccessedByAnyLayer()
            .whereLayer("json").mayNotBeAccessedByAnyLayer()
            .ensureAllClassesAreContainedInArchitecture();
    // spotless:on

    @ArchTest
    static final ArchRule noCycles = slices().matching(ROOT + ".(*)..").should().beFreeOfCycles();

    /** Pricing knows repairs, and no kind of finding. */
    @ArchTest
    static final ArchRule pricesDoNotKnowFindings = noClasses()
            .that()
            .resideInAPackage(ROOT + ".pacing.price..")
            .should()
            .dependOnClassesThat(resideInAPackage(ROOT + ".pacing"));

    /** No two classes depend on each other, directly or through others. Nested classes belong to their outermost one. */
    @ArchTest
    static final ArchRule noCyclesBetweenClasses =
            slices().assignedFrom(outermostClasses()).should().beFreeOfCycles();

    /** The sealed families: an interface and the classes that it permits name each other, and count as one. */
    private static final Map<String, String> SEALED_FAMILIES = Map.of(
            ROOT + ".pacing.Finding", ROOT + ".pacing.AnyFinding",
            ROOT + ".pacing.OwnFinding", ROOT + ".pacing.AnyFinding",
            ROOT + ".pacing.price.Repair", ROOT + ".pacing.price.PricePlan");

    private static SliceAssignment outermostClasses() {
        return new SliceAssignment() {
            @Override
            public SliceIdentifier getIdentifierOf(JavaClass javaClass) {
                JavaClass outermost = javaClass;
                while (outermost.getEnclosingClass().isPresent()) {
                    outermost = outermost.getEnclosingClass().get();
                }
                String name = outermost.getName();
                return SliceIdentifier.of(SEALED_FAMILIES.getOrDefault(name, name));
            }

            @Override
            public String getDescription() {
                return "outermost classes";
            }
        };
    }

    @ArchTest
    static final ArchRule formatsDoNotKnowEachOther = slices().matching(ROOT + ".read.(*)..")
            .should()
            .notDependOnEachOther()
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule fitStaysInItsReader = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + ".read.fit..")
            .should()
            .dependOnClassesThat(resideInAPackage("com.garmin.."));

    @ArchTest
    static final ArchRule databasesStayInSeason = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + ".season..")
            .should()
            .dependOnClassesThat(resideInAnyPackage("java.sql..", "javax.sql..", "org.sqlite.."));

    @ArchTest
    static final ArchRule tablesStayInTable = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + ".table..")
            .should()
            .dependOnClassesThat(resideInAnyPackage("tech.tablesaw.."));

    @ArchTest
    static final ArchRule jsonStaysInJson = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + ".json..")
            .should()
            .dependOnClassesThat(resideInAnyPackage("tools.jackson..", "com.fasterxml.."));

    /** {@code Replayer} and {@code Comparer} are doors: they open files, and hand rides to the numbers of their package. */
    @ArchTest
    static final ArchRule numbersArePure = noClasses()
            .that()
            .resideInAnyPackage(NUMBERS)
            .and()
            .haveSimpleNameNotEndingWith("Replayer")
            .and()
            .haveSimpleNameNotEndingWith("Comparer")
            .should()
            .dependOnClassesThat(resideInAnyPackage("java.io..", "java.nio.file..", "java.net..", "java.sql..")
                    .and(DescribedPredicate.not(type(Serializable.class)))
                    .and(DescribedPredicate.not(type(java.io.Serial.class))));

    @ArchTest
    static final ArchRule noHiddenClock = noClasses()
            .should()
            .callMethodWhere(target(nameMatching("now")).and(target(owner(resideInAPackage("java.time..")))));

    /** A deadline is the one thing that a clock may decide, and only where the caller has set one. */
    @ArchTest
    static final ArchRule theClockOnlyCancels = noClasses()
            .that()
            .doNotHaveFullyQualifiedName(ROOT + ".cancel.Cancellation")
            .should()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(System.class, "currentTimeMillis");

    @ArchTest
    static final ArchRule publicClassesAreClosed = classes()
            .that()
            .arePublic()
            .and()
            .areNotInterfaces()
            .and()
            .areNotEnums()
            .should()
            .haveModifier(JavaModifier.FINAL);

    @ArchTest
    static final ArchRule noMutableStatics = fields().that()
            .areStatic()
            .and(are(DescribedPredicate.describe(
                    "not synthetic", field -> !field.getModifiers().contains(JavaModifier.SYNTHETIC))))
            .should()
            .beFinal();

    @ArchTest
    static final ArchRule quiet = noClasses().should(ACCESS_STANDARD_STREAMS);

    @ArchTest
    static final ArchRule strangersStayInside = methods()
            .that()
            .arePublic()
            .and()
            .areDeclaredInClassesThat()
            .arePublic()
            .and()
            .areDeclaredInClassesThat()
            .resideOutsideOfPackage(ROOT + ".table..")
            .should(onlyShowOwnTypes());

    /** A public signature speaks of Java's and this project's types only, so that no library becomes part of the API. */
    private static ArchCondition<JavaMethod> onlyShowOwnTypes() {
        return new ArchCondition<>("show no third-party type") {
            @Override
            public void check(JavaMethod method, ConditionEvents events) {
                for (JavaClass shown : method.getAllInvolvedRawTypes()) {
                    String name = shown.getBaseComponentType().getName();
                    boolean own = name.startsWith(ROOT) || name.startsWith("java.") || !name.contains(".");
                    if (!own) {
                        events.add(SimpleConditionEvent.violated(method, method.getFullName() + " shows " + name));
                    }
                }
            }
        };
    }

    @ArchTest
    static void theRulesSeeTheProject(JavaClasses project) {
        assertThat(project.stream().map(JavaClass::getPackageName))
                .contains(
                        ROOT, ROOT + ".ride", ROOT + ".read.fit", ROOT + ".clean", ROOT + ".intake", ROOT + ".pacing");
    }
}
