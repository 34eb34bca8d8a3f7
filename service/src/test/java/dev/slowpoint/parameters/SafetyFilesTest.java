package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SafetyFilesTest {

    private static void readWith(String changed, UnaryOperator<String> change) {
        SafetyFiles.read(file -> {
            String text = new String(ShippedSafety.bytes(file), StandardCharsets.UTF_8);
            if (!file.equals(changed)) {
                return CsvTable.read(file, text.getBytes(StandardCharsets.UTF_8));
            }
            String other = change.apply(text);
            assertThat(other).isNotEqualTo(text);
            return CsvTable.read(file, other.getBytes(StandardCharsets.UTF_8));
        });
    }

    @Test
    void shipped_files_hold_what_was_published() {
        assertThat(ShippedSafety.KNOWLEDGE.tables()).hasSize(15);
        assertThat(ShippedSafety.KNOWLEDGE.rules().rules()).hasSize(9);
        assertThat(ShippedSafety.KNOWLEDGE.tables().values().stream().filter(t -> t.id().startsWith("fsis")))
                .hasSize(5);
        // 3 columns of 31 rows for meat, 12 of 30 for each bird.
        assertThat(CsvTable.read("fsis-tables.csv", ShippedSafety.bytes("fsis-tables.csv"))
                        .rows())
                .hasSize(813);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "requirements.csv | K-STEC-UK      | K-STEC-UX       | line: names 'K-STEC-UX'",
                "requirements.csv | fsis-turkey-7.0 | fsis-turkey-8  | tables: names 'fsis-turkey-8'",
                "requirements.csv | bivalve,any    | oyster,any      | groups: holds 'oyster'",
                "requirements.csv | salmonella,6.5 | salmonella,6.4  | target: is not that of the table",
                "requirements.csv | viruses        | salmonella      | hazard: is not that of the line or table",
                "tables.csv       | trichinella,trichinella | worms,trichinella | has no rows",
                "treatment-tables.csv | bivalve-eu | bivalve         | has no rows",
                "treatment-tables.csv | bivalve-eu,,,90,90 | bivalve-eu,,,90,x | time_s: holds 'x'",
                "limits.csv       | X-CBN-1        | X-CBN-2         | id: stands twice",
                "limits.csv       | warm-up,       | warmup,         | kind: holds 'warmup'",
                "limits.csv       | 168,h          | 168,weeks       | unit: holds 'weeks'",
                "growth.csv       | rat2           | rat3            | form: holds 'rat3'",
                "growth.csv       | cooling,any    | cooking,any     | told: holds 'cooking'",
                "growth.csv       | 10,51,10,52    | 51,10,10,52     | each range must rise",
                "central-kinetics.csv | 62.7,0.107 | 62.7,0          | spread of log10 D",
                "inactivation.csv | 70,20,7.5      | 70,-20,7.5      | K-LM-UK",
                "rules.csv        | ,yes,          | ,no,            | no rule is the default",
                "rules.csv        | ,UK-HOT63,FC   | ,UK-HOT64,FC    | hot_holding: names 'UK-HOT64'",
                "rules.csv        | ,AU-VIC-5D,    | ,AU-VIC-6D,     | storage: names 'AU-VIC-6D'",
                "rules.csv        | ,AU-NSW-6H,    | ,AU-NSW-7H,     | warm_up: names 'AU-NSW-7H'",
                "rules.csv        | ,holding,      | ,labels,        | own: names LABELS, of which clauses.csv has nothing",
                "clauses.csv      | ,nz-mpi,       | ,nz-mpo,        | no rule 'nz-mpo'",
                "clauses.csv      | ,eaters,       | ,eating,        | topic: holds 'eating'",
                "clauses.csv      | ,5,d,          | ,5,,            | limit and unit must stand together",
                "requirements.csv | nz-mpi,own     | nz-mpi,mine     | basis: holds 'mine'"
            })
    void a_fault_is_named_with_its_file_and_column(String file, String from, String to, String complaint) {
        assertThatThrownBy(() -> readWith(file, text -> text.replace(from, to))).hasMessageContaining(complaint);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "requirements.csv | bivalve-eu,,decides,no,READ_ABSTRACT",
                "tables.csv | 1,treatment,READ_ABSTRACT,\"EU treatment",
                "inactivation.csv | default Listeria,READ_SECONDARY"
            },
            ignoreLeadingAndTrailingWhitespace = true,
            quoteCharacter = '\'')
    void a_deciding_requirement_resting_on_memory_stops_the_reading(String file, String cells) {
        String recalled = cells.replace("READ_ABSTRACT", "MEMORY").replace("READ_SECONDARY", "MEMORY");
        assertThatThrownBy(() -> readWith(file, text -> text.replace(cells, recalled)))
                .hasMessageContaining("must not decide");
    }
}
