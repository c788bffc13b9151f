package io.burnlaw.report.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.burnlaw.report.HostileDocument;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.table.PublishedTable.Cell;
import io.burnlaw.report.table.PublishedTable.Column;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PublishedTableTest {

    @ParameterizedTest
    @ValueSource(
            strings = {"=1+1", "+1", "-1", "@SUM(A1)", "  =1+1", "\t=1+1", "\uff1d1+1", "\uff0b1", "\uff0d1", "\uff201"
            })
    void wordsThatASpreadsheetWouldRunBeginWithAnApostrophe(String words) {
        assertThat(Cell.of(words).text()).startsWith("'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NS-01", "a=b", "1.5", "date sugar", ""})
    void otherWordsStandAsTheyAre(String words) {
        assertThat(Cell.of(words).text()).isEqualTo(words);
    }

    @Test
    void aNegativeNumberIsNoFormula() {
        assertThat(Cell.of(-1.5e-7).text()).isEqualTo("-1.5E-7");
        assertThat(Cell.of((Number) null).text()).isEmpty();
    }

    @Test
    void commasQuotesAndLineEndsAreQuoted() throws IOException {
        PublishedTable table = new PublishedTable(
                "x.csv",
                "x",
                List.of(new Column("name", null, "string", "a name"), new Column("rate", "mm/s", "double", "a rate")),
                List.of(List.of(new Cell("a,\"b\"\nc"), Cell.of(1.25)), List.of(new Cell(" d "), Cell.EMPTY)));
        assertThat(csv(table)).isEqualTo("name,rate [mm/s]\n\"a,\"\"b\"\"\nc\",1.25\n\" d \",\n");
    }

    @Test
    void noCellOfAHostileCampaignIsAFormula() throws IOException {
        String csv = csv(RateTable.of(HostileDocument.document()));
        assertThat(csv).contains("'=cmd|").doesNotContainPattern("(?m)^[=+@]").doesNotContainPattern(",\"?[=+@]");
    }

    @Test
    void aRowHasACellUnderEachHeading() {
        assertThatThrownBy(() -> new PublishedTable(
                        "x.csv", "x", List.of(new Column("a", null, "string", "a")), List.of(List.of())))
                .hasMessageContaining("0 cells under 1 headings");
    }

    @Test
    void numbersAreAsShortAsTheyCanBeReadBack() {
        // Java itself writes 8.409999999999999E21 before version 19 (JDK-4511638)
        assertThat(Cell.of(8.41E21).text()).isEqualTo("8.41E21");
        assertThat(DocumentFile.text(8.41E21)).isEqualTo("8.41E21\n");
        assertThat(Cell.of(0.1 + 0.2).text()).isEqualTo("0.30000000000000004");
        assertThat(Cell.of(12).text()).isEqualTo("12");
    }

    private static String csv(PublishedTable table) throws IOException {
        StringWriter file = new StringWriter();
        table.write(file);
        return file.toString();
    }
}
