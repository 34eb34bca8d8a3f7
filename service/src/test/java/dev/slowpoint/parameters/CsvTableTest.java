package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.food.Form;
import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class CsvTableTest {

    private static CsvTable table(String text) {
        return CsvTable.read("some.csv", text.getBytes(StandardCharsets.UTF_8));
    }

    private static CsvTable.Row row(String heading, String cells) {
        return table(heading + "\n" + cells + "\n").rows().get(0);
    }

    @Test
    void cells_are_read_by_the_name_of_their_column() {
        CsvTable.Row row = row("id,value,note", "x, 1.5 ,\"one, two\"");

        assertThat(row.text("id")).isEqualTo("x");
        assertThat(row.number("value")).isEqualTo(1.5);
        assertThat(row.text("note")).isEqualTo("one, two");
    }

    @Test
    void the_mark_of_a_spreadsheet_before_the_text_is_no_part_of_the_first_column() {
        assertThat(row("\uFEFFid,value", "x,1").text("id")).isEqualTo("x");
    }

    @Test
    void words_of_a_list_are_split_and_checked() {
        assertThat(row("a", "x| y").words("a")).containsExactly("x", "y");
        assertThat(row("a,b", ",1").words("a")).isEmpty();
        assertThat(row("a", "intact|minced").wordSet(Form.class, "a"))
                .containsExactlyInAnyOrder(Form.INTACT, Form.MINCED);
        assertThatThrownBy(() -> row("a", "x||y").words("a")).hasMessageContaining("some.csv line 2, column a");
        assertThatThrownBy(() -> row("a", "x|x").words("a")).hasMessageContaining("stands twice");
        assertThatThrownBy(() -> row("a", "intact|mince").wordSet(Form.class, "a"))
                .hasMessageContaining("'mince'");
        assertThatThrownBy(() -> row("a,b", ",1").wordSet(Form.class, "a")).hasMessageContaining("must not be empty");
    }

    @Test
    void marks_may_be_written_with_either_joint_and_in_either_case() {
        assertThat(row("mark,source", "READ_ABSTRACT,x").provenance())
                .isEqualTo(new Provenance(Mark.READ_ABSTRACT, "x"));
        assertThat(row("mark,source", "read-abstract,x").provenance().mark()).isEqualTo(Mark.READ_ABSTRACT);
        assertThatThrownBy(() -> row("mark,source", "seen,x").provenance())
                .hasMessageStartingWith("some.csv line 2, column mark: holds 'seen', which is none of [READ,");
        assertThatThrownBy(() -> row("mark,source", "READ,").provenance())
                .hasMessage("some.csv line 2, column source: must not be empty");
    }

    @Test
    void yes_and_no_are_the_only_answers() {
        assertThat(row("wild", "yes").yes("wild")).isTrue();
        assertThat(row("wild", "no").yes("wild")).isFalse();
        assertThatThrownBy(() -> row("wild", "true").yes("wild")).hasMessageContaining("neither yes nor no");
    }

    @Test
    void a_number_that_is_none_names_file_line_and_column() {
        CsvTable table = table("id,value\nx,1\ny,\"0,5\"\nz,1e999\n");

        assertThatThrownBy(() -> table.rows().get(1).number("value"))
                .hasMessage("some.csv line 3, column value: holds '0,5', which is no number");
        assertThatThrownBy(() -> table.rows().get(2).number("value"))
                .hasMessage("some.csv line 4, column value: holds '1e999', which is not finite");
        assertThatThrownBy(() -> table.rows().get(0).number("values"))
                .hasMessage("some.csv line 2, column values: is no column of this file");
    }

    @Test
    void a_repeated_key_is_refused() {
        CsvTable table = table("id,value\nx,1\nx,2\n");

        assertThatThrownBy(() -> table.rowsUniqueBy("id")).hasMessage("some.csv line 3, column id: stands twice");
        assertThat(table.rowsUniqueBy("value")).hasSize(2);
    }

    @Test
    void a_row_with_a_cell_too_few_or_too_many_names_its_line() {
        assertThatThrownBy(() -> table("id,value\nx,1\ny\n")).hasMessageStartingWith("some.csv line 3: cannot be read");
        assertThatThrownBy(() -> table("id,value\nx,1,2\n")).hasMessageStartingWith("some.csv line 2: cannot be read");
    }

    @Test
    void text_in_another_encoding_is_refused() {
        byte[] latin = "id,value\nÅ,1\n".getBytes(StandardCharsets.ISO_8859_1);

        assertThatThrownBy(() -> CsvTable.read("some.csv", latin))
                .hasMessageStartingWith("some.csv is not text in UTF-8");
    }
}
