package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whole campaigns and documents, changed by a seed, through the main of the built jar: it answers with 0, 1 or 2, in words;
 * what says the same in another way gives the same law; firings that were not changed are not changed in the answer; and
 * no fault of the program is met, guarded or not. A study: {@code -Dburnlaw.mutants=20000}.
 */
class MutantsIT {

    private static final int MUTANTS = Integer.getInteger("burnlaw.mutants", 60);
    private static final long SEED = Long.getLong("burnlaw.seed", 14_300_000);

    private static final String[] STRANGE = {
        "null", "-1", "0", "1e303", "\"x\"", "[]", "{}", "[null]", "true", "\"MPa\"", "\"mm/s\"", "1e-303", "\"[psi]\""
    };

    private static final Pattern VALUE =
            Pattern.compile("(?<=[:\\[,] ?)(?:-?[0-9][0-9.eE+-]*|\"[^\"\\n]{0,40}\"|true|false|null)(?=[,\\n\\]} ])");

    private static final Pattern UNUSABLE = Pattern.compile("(\\d+) rows? cannot be used");

    @TempDir
    private Path folder;

    private final MutatedCampaigns mutations = MutatedCampaigns.small();
    private final JarInside jar = new JarInside();

    MutantsIT() throws Exception {}

    @AfterEach
    void close() throws Exception {
        jar.close();
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

    private static List<Double> laws(JsonNode document) {
        List<Double> laws = new ArrayList<>();
        for (JsonNode formulation : document.at("/formulations")) {
            JsonNode law = formulation.at("/single_law");
            for (String figure : List.of("/rate_at_reference", "/exponent")) {
                for (String end : List.of("/value", "/low", "/high")) {
                    laws.add(law.at(figure + end).asDouble());
                }
            }
        }
        return laws;
    }

    /** To a millionth: another unit moves last bits, and the intervals are drawn from resampled points. */
    private static boolean same(List<Double> one, List<Double> other) {
        for (int i = 0; i < one.size(); i++) {
            if (!(Math.abs(one.get(i) - other.get(i)) <= 1e-6 * Math.abs(one.get(i)))) {
                return false;
            }
        }
        return one.size() == other.size();
    }

    private String[] way(long seed, Path campaign) {
        int way = (int) (seed % 20);
        if (way < 8) {
            return new String[] {"run", campaign.toString(), "--json", "--reproducible"};
        }
        return switch (way) {
            case 8 ->
                new String[] {
                    "run", campaign.toString(), "-o", folder.resolve("report").toString()
                };
            case 9 -> new String[] {"plan", campaign.toString()};
            default -> new String[] {"check", campaign.toString()};
        };
    }

    private Path write(MutatedCampaigns.Mutant mutant) throws Exception {
        Path campaign = folder.resolve("campaign");
        MutatedCampaigns.delete(campaign);
        mutant.write(campaign);
        return campaign;
    }

    @Test
    void everyMutantOfACampaignIsAnsweredInWords() throws Exception {
        MutantTally tally = new MutantTally("campaigns");
        Answer base = jar.answer("run", write(mutations.unchanged()).toString(), "--json", "--reproducible");
        assertThat(base.code()).as(base.err()).isZero();
        List<Double> laws = laws(base.document());
        assertThat(laws).hasSize(12).doesNotContain(0.0);
        Map<String, String> own = own(base.document());
        for (long seed = SEED; seed < SEED + MUTANTS; seed++) {
            MutatedCampaigns.Mutant mutant = mutations.mutant(seed);
            Path campaign = write(mutant);
            String[] words = way(seed, campaign);
            Answer answer = jar.answer(words);
            tally.judge(answer, mutant.what(), seed);
            tally.leaveNowAndThen(SEED);
            // there is no motor to plan for in one of the formulations, changed or not
            if (mutant.meaningKept() && answer.code() != (words[0].equals("plan") ? 1 : 0)) {
                tally.wrong("same meaning, and exit " + answer.code(), mutant.what(), seed);
            }
            if (!words[words.length - 1].equals("--reproducible") || answer.code() > 1) {
                continue;
            }
            JsonNode document = answer.document();
            if (mutant.meaningKept()) {
                tally.count("law kept");
                if (!same(laws, laws(document))) {
                    tally.wrong("same meaning, other law: " + laws(document), mutant.what(), seed);
                }
            }
            if (!mutant.touched().isEmpty()) {
                tally.count("others unchanged");
                Map<String, String> now = own(document);
                for (Map.Entry<String, String> each : own.entrySet()) {
                    if (!each.getKey().equals(mutant.touched())
                            && !each.getValue().equals(now.get(each.getKey()))) {
                        tally.wrong("changed as well: " + each.getKey(), mutant.what(), seed);
                    }
                }
            }
            if (seed % 5 == 0) {
                tally.count("check as run");
                checkAsRun(campaign, document, tally, mutant, seed);
            }
        }
        tally.leave(SEED);
        assertThat(tally.wrong()).isEmpty();
    }

    /** Reading and reduction alone, on a tiny campaign: of these many more can be tried; every twentieth is run too. */
    @Test
    void everyMutantIsCheckedInWords() throws Exception {
        MutantTally tally = new MutantTally("checks");
        MutatedCampaigns tiny = MutatedCampaigns.tiny();
        long first = SEED + 7_000_000;
        for (long seed = first; seed < first + MUTANTS; seed++) {
            MutatedCampaigns.Mutant mutant = tiny.mutant(seed);
            Path campaign = write(mutant);
            Answer check = jar.answer("check", campaign.toString());
            tally.judge(check, mutant.what(), seed);
            tally.leaveNowAndThen(first);
            if (mutant.meaningKept()) {
                if (check.code() != 0) {
                    tally.wrong("same meaning, and exit " + check.code(), mutant.what(), seed);
                }
            }
            if (seed % 20 == 0 && check.code() < 2) {
                Answer run = jar.answer("run", campaign.toString(), "--json", "--reproducible");
                tally.judge(run, mutant.what(), seed);
                tally.count("check as run");
                if (run.code() < 2) {
                    checkAsRun(campaign, run.document(), tally, mutant, seed);
                }
            }
        }
        tally.leave(first);
        assertThat(tally.wrong()).isEmpty();
    }

    private void checkAsRun(
            Path campaign, JsonNode document, MutantTally tally, MutatedCampaigns.Mutant mutant, long seed)
            throws Exception {
        int rejected = 0;
        for (JsonNode firing : document.at("/firings")) {
            boolean aside = firing.at("/findings").toString().contains("\"set-aside\"");
            rejected += firing.at("/status").asText().equals("rejected") && !aside ? 1 : 0;
        }
        Answer check = jar.answer("check", campaign.toString());
        var unusable = UNUSABLE.matcher(check.out());
        int said = unusable.find() ? Integer.parseInt(unusable.group(1)) : 0;
        if (said != rejected) {
            tally.wrong("rows that check names: " + said + ", that run rejects: " + rejected, mutant.what(), seed);
        }
    }

    /** Hints name the command as it was started, and lines are broken by their length: neither is the answer. */
    private static Answer asTyped(Answer answer) {
        return new Answer(answer.code(), asTyped(answer.out()), asTyped(answer.err()));
    }

    private static String asTyped(String text) {
        return text.replaceAll("\\s+", " ").replaceAll("java -jar \\S+\\.jar", "burnlaw");
    }

    @Test
    void aProcessAnswersAsTheJarInside() throws Exception {
        MutantTally tally = new MutantTally("processes");
        long first = SEED + 5_000_000;
        for (long seed = first; seed < first + Math.max(3, MUTANTS / 40); seed++) {
            MutatedCampaigns.Mutant mutant = mutations.mutant(seed);
            Path campaign = write(mutant);
            String[] words = way(seed, campaign);
            RunnableJar.Outcome outcome = RunnableJar.runNarrow(folder, words);
            Answer answer = new Answer(outcome.exitCode(), outcome.out(), outcome.err());
            tally.judge(answer, mutant.what(), seed);
            tally.leaveNowAndThen(first);
            tally.count("as a process");
            MutatedCampaigns.delete(folder.resolve("report"));
            if (!asTyped(jar.answer(words)).equals(asTyped(answer))) {
                tally.wrong("another answer inside", mutant.what(), seed);
            }
        }
        tally.leave(first);
        assertThat(tally.wrong()).isEmpty();
    }

    /** Values by the two members before them: else nearly all would be of the courses over time. */
    private static List<List<MatchResult>> places(String document) {
        Map<String, List<MatchResult>> places = new TreeMap<>();
        List<String> last = new ArrayList<>(List.of("", ""));
        Pattern memberOrValue = Pattern.compile("\"(\\w+)\" ?:|" + VALUE.pattern());
        memberOrValue.matcher(document).results().forEach(found -> {
            if (found.group(1) != null) {
                last.add(found.group(1));
                last.remove(0);
            } else {
                places.computeIfAbsent(last.toString(), names -> new ArrayList<>())
                        .add(found);
            }
        });
        return List.copyOf(places.values());
    }

    @Test
    void everyMutantOfADocumentIsAnsweredInWords() throws Exception {
        MutantTally tally = new MutantTally("documents");
        String whole = jar.answer("run", write(mutations.unchanged()).toString(), "--json", "--reproducible")
                .out();
        Path good = Files.writeString(folder.resolve("good.json"), whole);
        Path bad = folder.resolve("bad.json");
        List<List<MatchResult>> places = places(whole);
        long first = SEED + 6_000_000;
        for (long seed = first; seed < first + Math.max(60, MUTANTS / 5); seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<MatchResult> alike = places.get(random.nextInt(places.size()));
            MatchResult at = alike.get(random.nextInt(alike.size()));
            String to = STRANGE[random.nextInt(STRANGE.length)];
            String made = whole.substring(0, at.start()) + to + whole.substring(at.end());
            if (random.nextInt(10) == 0) {
                int cut = random.nextInt(whole.length());
                made = whole.substring(0, cut) + whole.substring(Math.min(whole.length(), cut + random.nextInt(200)));
            }
            Files.write(bad, made.getBytes(StandardCharsets.UTF_8));
            String drawn = folder.resolve("drawn").toString();
            String[] words = switch ((int) (seed % 4)) {
                case 0 -> new String[] {"render", bad.toString(), "-o", drawn};
                case 1 -> new String[] {"compare", good.toString(), bad.toString(), "--json"};
                case 2 -> new String[] {"plan", bad.toString()};
                default -> new String[] {"plan", bad.toString(), "--throat", "7 mm"};
            };
            String place =
                    whole.substring(Math.max(0, at.start() - 40), at.start()).replaceAll("\\s+", " ");
            tally.judge(jar.answer(words), String.format(Locale.ROOT, "%s is %s, %s", place, to, words[0]), seed);
        }
        tally.leave(first);
        assertThat(tally.wrong()).isEmpty();
    }
}
