// SPDX-License-Identifier: EPL-2.0
package org.dutywright.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.dutywright.architecture.BundleTable.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The classes of every core bundle use only what {@link BundleTable} allows. */
final class ArrowsTest {
    /** Kept in class files only, read by bnd, absent at run time. */
    private static final String BUILD_ANNOTATIONS = "aQute.bnd.annotation";

    static Stream<Row> rows() {
        return BundleTable.rows().stream();
    }

    @Test
    void the_table_names_every_bundle_that_is_there() throws IOException {
        List<String> named = rows().map(Row::name).sorted().toList();

        assertThat(Checkout.coreBundles()).isEqualTo(named);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void no_bundle_reaches_itself_by_its_arrows(Row bundle) {
        assertThat(BundleTable.reachableFrom(bundle)).doesNotContain(bundle.name());
    }

    @ParameterizedTest
    @MethodSource("rows")
    void classes_use_only_what_the_table_allows(Row bundle) {
        classes().should().onlyDependOnClassesThat(areAllowedIn(bundle)).check(classesOf(bundle));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void classes_lie_in_packages_that_start_with_the_name_of_their_bundle(Row bundle) {
        classes().should().resideInAPackage(bundle.name() + "..").check(classesOf(bundle));
        assertThat(classesOf(bundle))
                .allSatisfy(type -> assertThat(BundleTable.ownerOf(type.getPackageName()))
                        .as(type.getName())
                        .contains(bundle));
    }

    /** Whoever writes a measurement outside of the product can do what the built-in ones do. */
    @Test
    void built_in_measurements_use_nothing_that_others_cannot_use() {
        classes()
                .that()
                .resideInAPackage("org.dutywright.pulse.internal.measurement..")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        "org.dutywright.pulse",
                        "org.dutywright.pulse.internal.measurement..",
                        "java..",
                        "org.apache.commons.math3..",
                        BUILD_ANNOTATIONS + "..")
                .check(new ClassFileImporter().importPath(Checkout.classesOf("org.dutywright.pulse")));
    }

    private static JavaClasses classesOf(Row bundle) {
        return new ClassFileImporter().importPath(Checkout.classesOf(bundle.name()));
    }

    private static DescribedPredicate<JavaClass> areAllowedIn(Row bundle) {
        return DescribedPredicate.describe(
                "%s may use: Java without its windows, bundles %s and their own, libraries %s, no internal package"
                        .formatted(bundle.name(), bundle.uses(), bundle.libraries()),
                type -> type.getBaseComponentType().isPrimitive() || isAllowed(type.getPackageName(), bundle));
    }

    private static boolean isAllowed(String packageName, Row bundle) {
        Optional<Row> owner = BundleTable.ownerOf(packageName);
        if (owner.isPresent()) {
            return owner.get().equals(bundle) || isOffered(packageName, owner.get(), bundle);
        }
        boolean isPlainJava =
                BundleTable.isWithin(packageName, "java") && !BundleTable.isWithin(packageName, "java.awt");
        return isPlainJava || BundleTable.isWithin(packageName, BUILD_ANNOTATIONS) || bundle.mayUseLibrary(packageName);
    }

    private static boolean isOffered(String packageName, Row owner, Row user) {
        boolean isInternal = List.of(packageName.split("\\.", -1)).contains("internal");
        return !isInternal && BundleTable.reachableFrom(user).contains(owner.name());
    }
}
