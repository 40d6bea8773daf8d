package io.github.wattledger.cli;

import static com.tngtech.archunit.base.DescribedPredicate.alwaysTrue;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaModifier.FINAL;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.read.CsvColumns;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.RouteFiles;
import io.github.wattledger.read.RouteResult;
import io.github.wattledger.read.Spelling;
import io.github.wattledger.read.UnreadableRideException;

/** Which way the arrows point within the command line, and from it into the core. */
@AnalyzeClasses(packages = ArchitectureTest.CLI, importOptions = DoNotIncludeTests.class)
class ArchitectureTest {
    static final String CORE = "io.github.wattledger";
    static final String CLI = CORE + ".cli";

    // spotless:off
    @ArchTest
    static final ArchRule reportsDoNotKnowTheCommandLine = noClasses()
            .that().resideInAPackage(CLI + ".report..")
            .should().dependOnClassesThat(resideInAnyPackage("picocli..", CLI));

    @ArchTest
    static final ArchRule reportsDoNotKnowEachOther =
            slices().matching(CLI + ".report.(*)..").should().notDependOnEachOther()
                    .ignoreDependency(alwaysTrue(), resideInAPackage(CLI + ".report.words"));

    @ArchTest
    static final ArchRule wordsDoNotKnowWhoLaysThemOut = noClasses()
            .that().resideInAPackage(CLI + ".report.words")
            .should().dependOnClassesThat(resideInAPackage(CLI + ".report.(*)..")
                    .and(not(resideInAPackage(CLI + ".report.words"))));

    @ArchTest
    static final ArchRule noCycles = slices().matching(CORE + ".(**)").should().beFreeOfCycles();

    /** No two classes depend on each other, directly or through others. Nested classes belong to their outermost one. */
    @ArchTest
    static final ArchRule noCyclesBetweenClasses =
            slices().assignedFrom(outermostClasses()).should().beFreeOfCycles();

    private static SliceAssignment outermostClasses() {
        return new SliceAssignment() {
            @Override
            public SliceIdentifier getIdentifierOf(JavaClass javaClass) {
                JavaClass outermost = javaClass;
                while (outermost.getEnclosingClass().isPresent()) {
                    outermost = outermost.getEnclosingClass().get();
                }
                return SliceIdentifier.of(outermost.getName());
            }

            @Override
            public String getDescription() {
                return "outermost classes";
            }
        };
    }

    @ArchTest
    static final ArchRule theCoreIsReachedThroughItsResults = noClasses()
            .should().dependOnClassesThat(resideInAPackage(CORE + "..")
                    .and(not(resideInAPackage(CLI + "..")))
                    .and(not(resideInAnyPackage(
                            CORE, CORE + ".intake", CORE + ".ride", CORE + ".rider", CORE + ".clean", CORE + ".load", CORE + ".power",
                            CORE + ".course", CORE + ".rig", CORE + ".bunch", CORE + ".replay", CORE + ".compare", CORE + ".pacing..",
                            CORE + ".season", CORE + ".table", CORE + ".json", CORE + ".history", CORE + ".energy", CORE + ".plan")))
                    .and(not(belongToAnyOf(
                            UnreadableRideException.class, UnreadableRideException.Reason.class, ReadOptions.class, ReadLimits.class,
                            RideInput.class, CsvColumns.class, Spelling.class, RouteFiles.class, RouteResult.class,
                            ReadNote.class))))
            .orShould().dependOnClassesThat(belongToAnyOf(Cleaning.class));

    @ArchTest
    static final ArchRule theCoreWritesJson = noClasses()
            .should().dependOnClassesThat(resideInAnyPackage("tools.jackson..", "com.fasterxml.."));

    @ArchTest
    static final ArchRule onlyTheProfileSeesToml = noClasses()
            .that().resideOutsideOfPackage(CLI + ".profile")
            .should().dependOnClassesThat(resideInAnyPackage("org.tomlj..", "org.antlr.."));

    @ArchTest
    static final ArchRule onlyTheCsvReportSeesItsLibrary = noClasses()
            .that().resideOutsideOfPackage(CLI + ".report.csv")
            .should().dependOnClassesThat(resideInAnyPackage("org.apache.commons.csv.."));

    @ArchTest
    static final ArchRule onlyTheSeasonSeesTables = noClasses()
            .that().doNotHaveSimpleName("SeasonTablesFolder")
            .should().dependOnClassesThat(resideInAnyPackage(CORE + ".table", "tech.tablesaw.."));

    @ArchTest
    static final ArchRule onlyMainEndsTheProcess = noClasses()
            .that().doNotBelongToAnyOf(Main.class)
            .should().callMethod(System.class, "exit", int.class)
            .orShould().callMethod(Runtime.class, "exit", int.class)
            .orShould().callMethod(Runtime.class, "halt", int.class);

    @ArchTest
    static final ArchRule onlyMainSeesTheStandardStreams = noClasses()
            .that().doNotBelongToAnyOf(Main.class)
            .should(ACCESS_STANDARD_STREAMS);

    @ArchTest
    static final ArchRule noHiddenFilesInReports = noClasses()
            .that().resideInAPackage(CLI + ".report..")
            .should().dependOnClassesThat(resideInAnyPackage("java.nio.file..", "java.net.."));

    @ArchTest
    static final ArchRule classesAreClosed = classes()
            .that().areNotInterfaces().and().areNotEnums().and().areNotAnonymousClasses()
            .should().haveModifier(FINAL);
    // spotless:on
}
