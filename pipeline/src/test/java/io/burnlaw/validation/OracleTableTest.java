package io.burnlaw.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class OracleTableTest {

    private static final List<OracleTable.Row> ROWS = OracleTable.scan(Path.of("target", "test-classes"));

    @Test
    void everyOracleNamesItsSource() {
        assertThat(ROWS)
                .isNotEmpty()
                .allSatisfy(row -> assertThat(row.source()).as(row.place()).isNotBlank());
    }

    @Test
    void aNameInCamelCaseBecomesASentence() {
        assertThat(OracleTable.sentence("parametersAgreeWithNIST")).isEqualTo("Parameters agree with NIST");
        assertThat(OracleTable.sentence("lineOfGUMAnnexH3")).isEqualTo("Line of GUM annex H3");
    }

    @Test
    void theTableHasARowForEachCheckAndHidesNoPipe() {
        String table = OracleTable.markdown(ROWS);
        assertThat(table.lines().filter(line -> line.startsWith("| ") && !line.startsWith("| check")))
                .filteredOn(line -> !line.startsWith("| ---"))
                .hasSameSizeAs(ROWS)
                .allSatisfy(line -> assertThat(line.replace("\\|", "").chars().filter(c -> c == '|'))
                        .hasSize(5));
    }
}
