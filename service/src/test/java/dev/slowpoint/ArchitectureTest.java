package dev.slowpoint;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.springframework.web.bind.annotation.RestController;

/** The floors of the house: arrows point down only, and the floors of cooking know nothing of the web. */
@AnalyzeClasses(packages = "dev.slowpoint", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    @ArchTest
    static final ArchRule arrows_point_down_only = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .withOptionalLayers(true)
            .layer("heat")
            .definedBy("dev.slowpoint.heat..")
            .layer("food")
            .definedBy("dev.slowpoint.food..")
            .layer("safety")
            .definedBy("dev.slowpoint.safety..")
            .layer("texture")
            .definedBy("dev.slowpoint.texture..")
            .layer("plan")
            .definedBy("dev.slowpoint.plan..")
            .layer("parameters")
            .definedBy("dev.slowpoint.parameters..")
            .layer("ops")
            .definedBy("dev.slowpoint.ops..")
            .layer("api")
            .definedBy("dev.slowpoint.api..")
            .whereLayer("api")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("ops")
            .mayOnlyBeAccessedByLayers("api")
            .whereLayer("parameters")
            .mayOnlyBeAccessedByLayers("api")
            .whereLayer("plan")
            .mayOnlyBeAccessedByLayers("parameters", "ops", "api")
            .whereLayer("safety")
            .mayOnlyBeAccessedByLayers("plan", "parameters", "ops", "api")
            .whereLayer("texture")
            .mayOnlyBeAccessedByLayers("plan", "parameters", "ops", "api")
            .whereLayer("food")
            .mayOnlyBeAccessedByLayers("safety", "texture", "plan", "parameters", "ops", "api");

    @ArchTest
    static final ArchRule there_are_no_circles =
            slices().matching("dev.slowpoint.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule the_floors_of_cooking_are_plain_java = noClasses()
            .that()
            .resideInAnyPackage(
                    "dev.slowpoint.heat..",
                    "dev.slowpoint.food..",
                    "dev.slowpoint.safety..",
                    "dev.slowpoint.texture..",
                    "dev.slowpoint.plan..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "org.springframework..",
                    "tools.jackson..",
                    "com.fasterxml..",
                    "jakarta..",
                    "io.micrometer..",
                    "io.swagger..",
                    "org.slf4j..");

    @ArchTest
    static final ArchRule controllers_are_nobody_elses_business =
            classes().that().areAnnotatedWith(RestController.class).should().bePackagePrivate();

    @ArchTest
    static final ArchRule the_wire_is_the_business_of_the_api_alone = noClasses()
            .that()
            .resideOutsideOfPackages("dev.slowpoint.api..", "dev.slowpoint.kit..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("io.swagger..", "org.springdoc..", "tools.jackson.dataformat.cbor..");

    /** So that it can be run against anybody's server, and shares no mistake with ours. */
    @ArchTest
    static final ArchRule the_kit_knows_the_contract_and_nothing_of_the_service = noClasses()
            .that()
            .resideInAPackage("dev.slowpoint.kit..")
            .should()
            .dependOnClassesThat(resideInAPackage("dev.slowpoint..")
                    .and(not(resideInAPackage("dev.slowpoint.kit..")))
                    .or(resideInAPackage("org.springframework..")));

    @ArchTest
    static final ArchRule the_service_knows_nothing_of_the_kit = noClasses()
            .that()
            .resideOutsideOfPackage("dev.slowpoint.kit..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("dev.slowpoint.kit..");

    @ArchTest
    static final ArchRule nobody_reads_the_clock_in_the_floors_of_cooking = noClasses()
            .that()
            .resideInAnyPackage(
                    "dev.slowpoint.heat..",
                    "dev.slowpoint.food..",
                    "dev.slowpoint.safety..",
                    "dev.slowpoint.texture..",
                    "dev.slowpoint.plan..")
            .should()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.time.Instant")
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.time.Clock");
}
