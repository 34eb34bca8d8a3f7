package dev.slowpoint.kit.changes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.kit.Contract;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

class ReleasedContractTest {

    private final Path folder = Contracts.newestRelease();
    private final JsonNode released = ContractChanges.read(folder.resolve("openapi.yaml"));
    private final JsonNode present = Contracts.present();

    @Test
    void the_list_of_releases_ends_with_the_newest() {
        assertThat(Contract.RELEASED.version()).isEqualTo(folder.getFileName().toString());
    }

    @Test
    void nothing_of_the_newest_release_breaks() {
        assertThat(ContractChanges.between(released, present))
                .filteredOn(change -> change.severity() == Severity.BREAKING)
                .as("breaks of %s; see api-spec/released/README.md", folder.getFileName())
                .isEmpty();
    }

    @Test
    void the_version_rises_as_far_as_the_changes_ask() {
        ContractVersion lowest = ContractVersion.lowestAfter(released, present);
        if (lowest.equals(ContractVersion.of(released))) {
            assertThat(ContractVersion.of(present))
                    .as("identical contracts have one version")
                    .isEqualTo(lowest);
        } else {
            assertThat(ContractVersion.of(present))
                    .as("info.version, where the contract differs from %s", folder.getFileName())
                    .isGreaterThanOrEqualTo(lowest);
        }
    }

    @Test
    void a_release_lies_in_the_folder_of_its_version() {
        assertThat(ContractVersion.of(released))
                .hasToString(folder.getFileName().toString());
    }

    @Test
    void an_explanation_asks_for_a_patch_an_addition_for_a_minor_and_a_break_for_a_major_version() {
        ContractVersion before = ContractVersion.of(present);

        JsonNode explained = present.deepCopy();
        Contracts.set(explained, "/components/schemas/Geometry/description", "\"Other words.\"");
        JsonNode added = present.deepCopy();
        Contracts.set(added, "/components/schemas/Geometry/properties/heightMm", "{\"type\": \"number\"}");
        JsonNode broken = present.deepCopy();
        Contracts.remove(broken, "/paths/~1v1~1cook-plans");

        assertThat(ContractVersion.lowestAfter(present, explained))
                .isEqualTo(new ContractVersion(before.major(), before.minor(), before.patch() + 1));
        assertThat(ContractVersion.lowestAfter(present, added))
                .isEqualTo(new ContractVersion(before.major(), before.minor() + 1, 0));
        assertThat(ContractVersion.lowestAfter(present, broken))
                .isEqualTo(new ContractVersion(before.major() + 1, 0, 0));
        assertThat(ContractVersion.lowestAfter(present, present.deepCopy())).isEqualTo(before);
    }

    @Test
    void versions_are_ordered_by_number_and_not_by_letter() {
        assertThat(ContractVersion.parse("1.10.0")).isGreaterThan(ContractVersion.parse("1.9.9"));
        assertThat(ContractVersion.parse("2.0.0")).isGreaterThan(ContractVersion.parse("1.10.0"));
        assertThatThrownBy(() -> ContractVersion.parse("1.0")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ContractVersion.parse("01.0.0")).isInstanceOf(IllegalArgumentException.class);
    }
}
