package io.burnlaw.fuzz;

import io.burnlaw.validation.StudyReport;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Readers against many changed inputs: how many were tried. */
class ChangedInputsStudy {

    private static final long SEED = 8_000_000;

    @Test
    void noReaderFails() {
        Map<String, Integer> inputs = new LinkedHashMap<>();
        inputs.put("Quantity", 500_000);
        inputs.put("Document", 10_000);
        inputs.put("Campaign", 10_000);
        inputs.put("FiringLog", 4_000);
        inputs.put("Trace", 4_000);
        StringBuilder table = new StringBuilder("| reader | inputs |\n| --- | ---: |\n");
        for (Map.Entry<String, Integer> each : inputs.entrySet()) {
            MutatedInputsTest.run(each.getKey(), each.getValue(), SEED);
            table.append(String.format(Locale.ROOT, "| %s | %,d |%n", each.getKey(), each.getValue()));
        }
        StudyReport.section(70, "changed-inputs", """
                ## Readers against changed inputs

                Each input is a kept one with up to three changes: bytes cut, doubled, moved, or replaced by words that are difficult for readers (`ChangedInputsStudy`, seeds from 8,000,000 on). Each of them gave a result or a refusal in words. A search that is guided by coverage is started by `mvn -Pfuzz`.

                """ + table);
    }
}
