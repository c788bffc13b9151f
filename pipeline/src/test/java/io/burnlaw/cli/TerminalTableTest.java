package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

class TerminalTableTest {

    @Test
    void columnsAreAsWideAsTheirLongestText() {
        TerminalTable table = new TerminalTable(
                "points", List.of("point", "rate"), List.of(List.of("A-1", "4.15 ± 0.02"), List.of("long name", "5")));

        assertThat(table.text()).isEqualTo("""
                                   points           \s
                           point    |     rate      |
                        -----------------------------
                               A-1  |  4.15 ± 0.02  |
                         long name  |            5  |""");
    }

    @Test
    void printsATableOfColumnsAsTablesawDoes() {
        Table columns = Table.create(
                "throats",
                StringColumn.create("throat [mm]", "5.5", "5.25"),
                StringColumn.create("allowed", "yes", ""),
                StringColumn.create("n", "a long remark", "b"));

        assertThat(TerminalTable.of(columns).text())
                .isEqualTo(columns.printAll().replace(System.lineSeparator(), "\n"));
    }

    @Test
    void aTableWithoutRowsHasItsHeadings() {
        assertThat(new TerminalTable("none", List.of("a", "bc"), List.of()).text())
                .isEqualTo("    none    \n a  |  bc  |\n------------");
    }
}
