package io.burnlaw.report.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FileNamesTest {

    @ParameterizedTest
    @CsvSource({
        "NS-01, NS-01",
        "a b/c, a_b_c",
        "../../etc, __._etc",
        ".hidden, _hidden",
        "con, _con",
        "NUL.txt, _NUL.txt",
        "com1, _com1",
        "\u00e4\u00f6, __",
        "'', _",
        "-rf, _rf"
    })
    void anIdBecomesASafeName(String id, String name) {
        assertThat(FileNames.of(List.of(id))).containsEntry(id, name);
    }

    @Test
    void namesDifferEvenWhereCaseDoesNotCount() {
        assertThat(FileNames.of(List.of("A", "a", "a-2", "A")))
                .containsExactly(Map.entry("A", "A"), Map.entry("a", "a-2"), Map.entry("a-2", "a-2-2"));
    }

    @Test
    void whateverTheIdsTheNamesAreSafeAndDistinct() {
        SplittableRandom random = new SplittableRandom(11);
        String alphabet = "aA.-_/\\:*?\"<>| \u202e\u00e9\ud83d\ude80conprnaux1\0\n";
        for (int round = 0; round < 300; round++) {
            List<String> ids = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                StringBuilder id = new StringBuilder();
                for (int k = random.nextInt(0, 100); k > 0; k--) {
                    id.append(alphabet.charAt(random.nextInt(alphabet.length())));
                }
                ids.add(id.toString());
            }
            Map<String, String> names = FileNames.of(ids);
            assertThat(names.values())
                    .allMatch(name -> name.matches("[A-Za-z0-9_][A-Za-z0-9._-]{0,89}"), "safe")
                    .noneMatch(name -> name.contains(".."));
            assertThat(names.values().stream().map(name -> name.toLowerCase(Locale.ROOT)))
                    .doesNotHaveDuplicates();
            assertThat(names.keySet()).containsAll(ids);
        }
    }
}
