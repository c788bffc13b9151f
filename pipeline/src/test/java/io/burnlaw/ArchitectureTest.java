package io.burnlaw;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    /** In the order in which data flows. */
    private static final List<String> PACKAGES = List.of(
            "quantity",
            "finding",
            "campaign",
            "trace",
            "grain",
            "ballistics",
            "simulation",
            "reduction",
            "ratelaw",
            "batch",
            "regime",
            "comparison",
            "prediction",
            "planning",
            "characterize",
            "publish",
            "cli");

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("io.burnlaw");

    @Test
    void aPackageKnowsOnlyThoseToItsLeft() {
        for (int i = 0; i < PACKAGES.size() - 1; i++) {
            String[] right = PACKAGES.subList(i + 1, PACKAGES.size()).stream()
                    .map(name -> "io.burnlaw." + name + "..")
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("io.burnlaw." + PACKAGES.get(i) + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(right)
                    .allowEmptyShould(true)
                    .check(CLASSES);
        }
    }

    @Test
    void reportsKnowNobody() {
        noClasses()
                .that()
                .resideInAPackage("io.burnlaw.report..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(PACKAGES.stream()
                        .filter(name -> !name.equals("quantity"))
                        .map(name -> "io.burnlaw." + name + "..")
                        .toArray(String[]::new))
                .check(CLASSES);
    }

    @Test
    void onlyPublishAndTheCommandLineKnowTheReports() {
        noClasses()
                .that()
                .resideInAnyPackage(PACKAGES.stream()
                        .filter(name -> !name.equals("publish") && !name.equals("cli"))
                        .map(name -> "io.burnlaw." + name + "..")
                        .toArray(String[]::new))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("io.burnlaw.report..")
                .check(CLASSES);
    }

    /** Within reduction, campaign, trace and publish: what a part may not know. */
    @Test
    void aPartKnowsOnlyPartsBelowIt() {
        List<String> parts = List.of("point", "events", "screening", "balance", "strand");
        for (String part : parts) {
            noClasses()
                    .that()
                    .resideInAPackage("io.burnlaw.reduction." + part)
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage("io.burnlaw.reduction")
                    .check(CLASSES);
        }
        noClasses()
                .that()
                .resideInAnyPackage("io.burnlaw.reduction.point", "io.burnlaw.reduction.events")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "io.burnlaw.reduction.screening", "io.burnlaw.reduction.balance", "io.burnlaw.reduction.strand")
                .check(CLASSES);
        for (String read : List.of("campaign", "trace", "publish")) {
            noClasses()
                    .that()
                    .resideInAPackage("io.burnlaw." + read)
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage("io.burnlaw." + read + ".reading")
                    .check(CLASSES);
        }
    }
}
