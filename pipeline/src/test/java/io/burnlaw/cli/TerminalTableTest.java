package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

class TerminalTableTest {

    @Test
    void columnsAreAsWideAsTheirLongestText() {
        TerminalTable table = TerminalTable.of("points", 2)
                .with("point", List.of("A-1", "long name")::get)
                .with("rate", List.of("4.15 ± 0.02", "5")::get);

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
        TerminalTable table = TerminalTable.of("throats", 2);
        for (String heading : columns.columnNames()) {
            table = table.with(heading, columns.stringColumn(heading)::get);
        }

        assertThat(table.text()).isEqualTo(columns.printAll().replace(System.lineSeparator(), "\n"));
    }

    @Test
    void aTableWithoutRowsHasItsHeadings() {
        assertThat(TerminalTable.of("none", 0)
                        .with("a", row -> "")
                        .with("bc", row -> "")
                        .text())
                .isEqualTo("    none    \n a  |  bc  |\n------------");
    }
}
