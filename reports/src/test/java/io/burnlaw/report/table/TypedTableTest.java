package io.burnlaw.report.table;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.HostileDocument;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Unit;
import io.burnlaw.report.table.TypedTable.Part;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypedTableTest {

    @ParameterizedTest
    @ValueSource(
            strings = {"=1+1", "+1", "-1", "@SUM(A1)", "  =1+1", "\t=1+1", "\uff1d1+1", "\uff0b1", "\uff0d1", "\uff201"
            })
    void wordsThatASpreadsheetWouldRunBeginWithAnApostrophe(String words) throws IOException {
        assertThat(csv(words(words))).startsWith("w\n").containsPattern("\n\"?'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NS-01", "a=b", "1.5", "date sugar", ""})
    void otherWordsStandAsTheyAre(String words) throws IOException {
        assertThat(csv(words(words))).isEqualTo("w\n" + words + "\n");
    }

    @Test
    void aNegativeNumberIsNoFormula() throws IOException {
        assertThat(csv(numbers(-1.5e-7, Double.NaN))).isEqualTo("n\n-1.5E-7\n\n");
    }

    @Test
    void numbersAreAsShortAsTheyCanBeReadBack() throws IOException {
        // Java itself writes 8.409999999999999E21 before version 19 (JDK-4511638)
        assertThat(csv(numbers(8.41E21, 0.1 + 0.2))).isEqualTo("n\n8.41E21\n0.30000000000000004\n");
        assertThat(DocumentFile.text(8.41E21)).isEqualTo("8.41E21\n");
    }

    @Test
    void commasAndQuotesAreQuotedAndALineEndIsABlank() throws IOException {
        assertThat(csv(words("a,\"b\"\nc"))).isEqualTo("w\n\"a,\"\"b\"\" c\"\n");
        assertThat(csv(words(" d "))).isEqualTo("w\n\" d \"\n");
    }

    @Test
    void noCellOfAHostileCampaignIsAFormula() throws IOException {
        String csv = csv(RateTable.of(HostileDocument.document()));
        assertThat(csv).contains("'=cmd|").doesNotContainPattern("(?m)^[=+@]").doesNotContainPattern(",\"?[=+@]");
    }

    @Test
    void aQuantityComesBackInTheUnitOfItsColumn() throws IOException {
        Quantity bar = new Quantity(20, "bar", 18.0, 22.0, 0.95, 1.0);
        TypedTable<?> table = new TypedTable<>("x", "x", List.of(Optional.of(bar), Optional.<Quantity>empty()))
                .quantity("pressure", Unit.MPA, "a pressure", row -> row.orElse(null), Part.LOW, Part.HIGH);
        assertThat(table.quantity("pressure", 0)).isEqualTo(new Quantity(2, "MPa", 1.8, 2.2, 0.95, 0.1));
        assertThat(table.quantity("pressure", 1)).isNull();
        assertThat(csv(table)).isEqualTo("pressure [MPa],pressure_low [MPa],pressure_high [MPa]\n2.0,1.8,2.2\n,,\n");
    }

    @Test
    void whatHasNoDescriptionIsNotInTheFile() throws IOException {
        TypedTable<?> table = new TypedTable<>("x", "x", List.of(7))
                .count("c", "a count", row -> row)
                .words("beside", null, row -> "seen")
                .truth("t", "whether", row -> row > 7);
        assertThat(csv(table)).isEqualTo("c,t\n7,false\n");
        assertThat(table.words("beside", 0)).isEqualTo("seen");
        assertThat(table.metadata()).contains("\"integer\"", "\"boolean\"").doesNotContain("beside");
    }

    @Test
    void manyDifferentWordsComeBack() {
        List<String> many = new ArrayList<>();
        for (int i = 0; i < 70_000; i++) {
            many.add("P-" + i);
        }
        // the dictionary of the column grows over 255 and over 65,535 words
        TypedTable<?> table = new TypedTable<>("x", "x", many).words("w", "words", row -> row);
        assertThat(List.of(0, 255, 256, 65_535, 65_536, 69_999))
                .allSatisfy(row -> assertThat(table.words("w", row)).isEqualTo("P-" + row));
    }

    private static TypedTable<?> words(String words) {
        return new TypedTable<>("x", "x", List.of(words)).words("w", "words", row -> row);
    }

    private static TypedTable<?> numbers(double... numbers) {
        return new TypedTable<>("x", "x", Arrays.stream(numbers).boxed().toList())
                .number("n", null, "numbers", row -> row);
    }

    private static String csv(TypedTable<?> table) throws IOException {
        StringWriter file = new StringWriter();
        table.write(file);
        return file.toString();
    }
}
