package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whole campaigns and documents, changed by a seed, through the whole program: it answers with 0, 1 or 2, in words, and
 * what was not changed is not changed in the answer. A long search: {@code -Dburnlaw.mutants=20000}.
 */
class MutatedCampaignsTest {

    private static final int MUTANTS = Integer.getInteger("burnlaw.mutants", 40);
    private static final long SEED = Long.getLong("burnlaw.seed", 14_000_000);

    private static final Pattern WORDS_OF_JAVA = Pattern.compile(
            "Exception|\\bjava\\.|JsonToken|\\bjavax\\.|com\\.fasterxml|org\\.apache|io\\.burnlaw|\\bat line \\d+ of class|@[0-9a-f]{6,}");

    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path temporary;

    /** What a command gave. */
    private record Answer(int code, String out, String err) {}

    private static Answer answer(String... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code;
        try {
            code = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                    .execute(words);
        } catch (StackOverflowError deep) {
            // as main has it
            code = ExitCode.PROGRAM_FAULT.number();
        }
        return new Answer(code, out.toString(), err.toString());
    }

    private static List<String> wrong(Answer answer) {
        List<String> wrong = new ArrayList<>();
        if (answer.code() < 0 || answer.code() > 2) {
            wrong.add("exit code " + answer.code() + " "
                    + answer.err().lines().limit(2).toList());
        }
        String told = answer.out().startsWith("{") ? answer.err() : answer.out() + answer.err();
        var java = WORDS_OF_JAVA.matcher(told);
        if (java.find()) {
            wrong.add("words of Java: "
                    + told.substring(Math.max(0, java.start() - 150), Math.min(told.length(), java.end() + 80)));
        }
        if (answer.out().startsWith("{") && answer.out().contains("The program failed on")) {
            int at = answer.out().indexOf("The program failed on");
            wrong.add("guarded fault: "
                    + answer.out().substring(at, Math.min(answer.out().length(), at + 60)));
        }
        return wrong;
    }

    /** The figures of each firing that come from its own record and row alone. */
    private static Map<String, String> own(JsonNode document) {
        Map<String, String> own = new TreeMap<>();
        for (JsonNode firing : document.at("/firings")) {
            own.put(
                    firing.at("/id").asText(),
                    firing.at("/events").toString()
                            + firing.at("/burn_time")
                            + firing.at("/max_pressure")
                            + firing.at("/rate/thickness_time"));
        }
        return own;
    }

    private static String laws(JsonNode document) {
        StringBuilder laws = new StringBuilder();
        for (JsonNode formulation : document.at("/formulations")) {
            JsonNode law = formulation.at("/single_law");
            laws.append(formulation.at("/id").asText())
                    .append(String.format(
                            Locale.ROOT,
                            " %.6e %.6f;",
                            law.at("/rate_at_reference/value").asDouble(),
                            law.at("/exponent/value")
                                    .asDouble(law.at("/exponent").asDouble())));
        }
        return laws.toString();
    }

    /** Counts of exit codes, and what was wrong. */
    static final class Tally {
        final int[] codes = new int[4];
        final Map<String, Integer> wrong = new TreeMap<>();
        int meaningKept;
        int othersCompared;

        void count(Answer answer) {
            codes[answer.code() >= 0 && answer.code() <= 2 ? answer.code() : 3]++;
        }

        void wrong(String what, String mutant, long seed) {
            System.out.println("WRONG " + seed + " " + mutant + " -> " + what);
            wrong.merge(what, 1, Integer::sum);
        }

        @Override
        public String toString() {
            return "exit 0: " + codes[0] + ", 1: " + codes[1] + ", 2: " + codes[2] + ", other: " + codes[3]
                    + ", meaning kept: " + meaningKept + ", others compared: " + othersCompared + ", wrong: "
                    + wrong.values().stream().mapToInt(each -> each).sum();
        }
    }

    static Tally campaigns(Path folder, long seed, int count) throws IOException {
        MutatedCampaigns mutations = new MutatedCampaigns();
        Path campaign = folder.resolve("campaign");
        mutations.unchanged().write(campaign);
        Answer base = answer("run", campaign.toString(), "--json");
        assertThat(base.code()).as(base.err()).isBetween(0, 1);
        JsonNode truth = JSON.readTree(base.out());
        String laws = laws(truth);
        Map<String, String> own = own(truth);
        Tally tally = new Tally();
        for (long each = seed; each < seed + count; each++) {
            if ((each - seed) % 500 == 499) {
                System.out.println("so far " + tally);
            }
            MutatedCampaigns.delete(campaign);
            MutatedCampaigns.Mutant mutant = mutations.mutant(each);
            mutant.write(campaign);
            int way = (int) (each % 20);
            Answer answer = way >= 12
                    ? answer("check", campaign.toString())
                    : way == 1
                            ? answer(
                                    "run",
                                    campaign.toString(),
                                    "-o",
                                    folder.resolve("report").toString())
                            : way == 2
                                    ? answer("plan", campaign.toString())
                                    : answer("run", campaign.toString(), "--json");
            tally.count(answer);
            for (String what : wrong(answer)) {
                tally.wrong(what, mutant.what(), each);
            }
            if (way < 3 || way >= 12 || answer.code() > 1) {
                if (mutant.meaningKept() && answer.code() > 1) {
                    tally.wrong("meaning kept, and refused", mutant.what(), each);
                }
                continue;
            }
            JsonNode document = JSON.readTree(answer.out());
            if (mutant.meaningKept()) {
                tally.meaningKept++;
                if (!laws(document).equals(laws)) {
                    tally.wrong("meaning kept, law changed: " + laws(document), mutant.what(), each);
                }
            }
            if (mutant.touched().startsWith("traces/")) {
                tally.othersCompared++;
                String touched = mutant.touched().replace("traces/", "").replace(".csv", "");
                Map<String, String> now = own(document);
                own.forEach((id, figures) -> {
                    if (!id.equals(touched) && !figures.equals(now.get(id))) {
                        tally.wrong("another firing changed: " + id, mutant.what(), 0);
                    }
                });
            }
        }
        return tally;
    }

    static Tally documents(Path folder, long seed, int count) throws IOException {
        MutatedCampaigns mutations = new MutatedCampaigns();
        Path campaign = folder.resolve("campaign");
        MutatedCampaigns.delete(campaign);
        mutations.unchanged().write(campaign);
        String whole = answer("run", campaign.toString(), "--json").out();
        String[] strange = {
            "null",
            "-1",
            "0",
            "1e303",
            "\"x\"",
            "[]",
            "{}",
            "[null]",
            "true",
            "\"MPa\"",
            "\"mm/s\"",
            "1e-303",
            "\"[psi]\""
        };
        Path good = Files.writeString(folder.resolve("good.json"), whole);
        Path bad = folder.resolve("bad.json");
        Tally tally = new Tally();
        List<int[]> values = new ArrayList<>();
        var value = Pattern.compile(
                        "(?<=[:\\[,] ?)(?:-?[0-9][0-9.eE+-]*|\"[^\"\\n]{0,40}\"|true|false|null)(?=[,\\n\\]} ])")
                .matcher(whole);
        while (value.find()) {
            values.add(new int[] {value.start(), value.end()});
        }
        for (long each = seed; each < seed + count; each++) {
            SplittableRandom random = new SplittableRandom(each);
            int[] at = values.get(random.nextInt(values.size()));
            String to = strange[random.nextInt(strange.length)];
            String made = whole.substring(0, at[0]) + to + whole.substring(at[1]);
            if (random.nextInt(10) == 0) {
                int cut = random.nextInt(whole.length());
                made = whole.substring(0, cut) + whole.substring(Math.min(whole.length(), cut + random.nextInt(200)));
            }
            Files.write(bad, made.getBytes(StandardCharsets.UTF_8));
            int way = (int) (each % 4);
            Answer answer = way == 0
                    ? answer(
                            "render",
                            bad.toString(),
                            "-o",
                            folder.resolve("drawn").toString())
                    : way == 1
                            ? answer("compare", good.toString(), bad.toString(), "--json")
                            : way == 2
                                    ? answer("plan", bad.toString())
                                    : answer("plan", bad.toString(), "--throat", "7 mm");
            tally.count(answer);
            String place = whole.substring(Math.max(0, at[0] - 40), at[0]).replaceAll("\\s+", " ");
            for (String what : wrong(answer)) {
                tally.wrong(what, place + " is " + to + " way " + way, each);
            }
        }
        return tally;
    }

    @Test
    void everyMutantOfACampaignIsAnsweredInWords() throws IOException {
        Tally tally = campaigns(temporary, SEED, MUTANTS);
        System.out.println("campaigns " + tally);
        assertThat(tally.wrong).isEmpty();
    }

    @Test
    void everyMutantOfADocumentIsAnsweredInWords() throws IOException {
        Tally tally = documents(temporary, SEED, MUTANTS);
        System.out.println("documents " + tally);
        assertThat(tally.wrong).isEmpty();
    }

    @Test
    void theSameRecordUnderTwoNamesIsSaid() throws IOException {
        Path campaign = temporary.resolve("twice");
        new MutatedCampaigns().unchanged().write(campaign);
        Files.write(campaign.resolve("traces/NS-06.csv"), Files.readAllBytes(campaign.resolve("traces/NS-04.csv")));
        assertThat(answer("run", campaign.toString(), "--json").out())
                .contains("traces/NS-06.csv holds the same bytes as traces/NS-04.csv");
    }

    /** For searches on several processes: seed and counts of campaigns and documents. */
    public static void main(String[] words) throws IOException {
        Locale.setDefault(Locale.ROOT);
        Path folder = Files.createTempDirectory("mutants");
        try {
            long seed = Long.parseLong(words[0]);
            System.out.println("campaigns " + campaigns(folder, seed, Integer.parseInt(words[1])));
            System.out.println("documents " + documents(folder, seed, Integer.parseInt(words[2])));
        } finally {
            MutatedCampaigns.delete(folder);
        }
    }
}
