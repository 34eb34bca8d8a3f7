package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Mark;
import dev.slowpoint.parameters.Sources.Cell;
import dev.slowpoint.parameters.Sources.Entry;
import dev.slowpoint.parameters.Sources.Table;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Where values come from, as told to people; with invented files. */
class SourcesTest {

    private static Table table(String text) {
        Sources sources = Sources.of(ParameterFiles.of(
                "x", Map.of("manifest.csv", bytes("file,what\nthings.csv,Things\n"), "things.csv", bytes(text))));
        assertThat(sources.overlay()).isEqualTo(Optional.empty());
        assertThat(sources.tables()).hasSize(1);
        return sources.tables().get(0);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void a_row_is_told_with_its_name_its_cells_and_its_source() {
        Table table = table("id,name,low,high,unit,mark,source,note\na,Thing,1,,K,READ,Author 2000,why\n");
        assertThat(table)
                .isEqualTo(new Table(
                        "things.csv",
                        "Things",
                        1,
                        List.of(new Entry(
                                "a, Thing",
                                List.of(new Cell("low", "1"), new Cell("unit", "K")),
                                Mark.READ,
                                "Author 2000",
                                "why",
                                false))));
    }

    @Test
    void a_part_with_a_mark_of_its_own_is_told_by_itself_where_it_has_a_value() {
        Table table = table("id,size,melts_C,melts_mark,melts_source,mark,source,note\n"
                + "a,1,5,MEMORY,recalled,READ,Author 2000,why\nb,2,,,,READ,Author 2001,\n");
        assertThat(table.entries())
                .containsExactly(
                        new Entry("a", List.of(new Cell("size", "1")), Mark.READ, "Author 2000", "why", false),
                        new Entry("a: melts", List.of(new Cell("melts_C", "5")), Mark.MEMORY, "recalled", "", false),
                        new Entry("b", List.of(new Cell("size", "2")), Mark.READ, "Author 2001", "", false));
    }

    @Test
    void rows_that_share_their_first_cell_are_told_apart_by_further_ones() {
        Table table = table("class,edge,k,mark,source\na,opens,1,READ,x\na,closes,2,READ,x\n");
        assertThat(table.entries()).extracting(Entry::item).containsExactly("a / opens", "a / closes");
    }

    @Test
    void a_file_whose_rows_have_no_source_is_listed_with_its_length_alone() {
        assertThat(table("table,time_s\na,1\na,2\n")).isEqualTo(new Table("things.csv", "Things", 2, List.of()));
    }
}
