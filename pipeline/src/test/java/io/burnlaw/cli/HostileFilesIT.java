package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that no logger writes, in a JVM with little memory: a clear message, and the other firings are not lost. */
class HostileFilesIT {

    /** A small part of what the hostile files would take. */
    private static final List<String> LITTLE_MEMORY = List.of("-Xmx400m", "-XX:+UseSerialGC", "-XX:-UsePerfData");

    private static final Path SUGAR = RunnableJar.SAMPLE_RUNS.resolve("new-sugar-source");
    private static final String GRAIN = "bates,2,14.00,38.04,62.04,9.51,218.2,200\n";

    @TempDir
    private Path folder;

    private Path campaign;

    @BeforeEach
    void copyAGoodCampaign() throws IOException {
        campaign = folder.resolve("campaign");
        Files.createDirectories(campaign.resolve("traces"));
        try (Stream<Path> files = Files.walk(SUGAR)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, campaign.resolve(SUGAR.relativize(file).toString()));
            }
        }
        // for the tests that run as another user
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private void addFirings(Iterable<String> traces) throws IOException {
        StringBuilder log = new StringBuilder(Files.readString(campaign.resolve("firings.csv")));
        int number = 0;
        for (String trace : traces) {
            log.append("BAD-")
                    .append(++number)
                    .append(",date,")
                    .append(trace)
                    .append(',')
                    .append(GRAIN);
        }
        Files.writeString(campaign.resolve("firings.csv"), log);
    }

    private Path trace(String name) {
        return campaign.resolve("traces").resolve(name);
    }

    private String goodTrace() throws IOException {
        return Files.readString(trace("NS-01.csv"));
    }

    private JsonNode report() throws IOException {
        return JsonMapper.builder()
                .build()
                .readTree(folder.resolve("report/burnlaw.json").toFile());
    }

    private static void sparse(Path file, long bytes) throws IOException {
        try (RandomAccessFile made = new RandomAccessFile(file.toFile(), "rw")) {
            made.setLength(bytes);
        }
    }

    private static void zipped(Path file, String head, long zeros) throws IOException {
        byte[] block = new byte[1 << 20];
        Arrays.fill(block, (byte) '0');
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(head.getBytes(StandardCharsets.UTF_8));
            for (long written = 0; written < zeros; written += block.length) {
                out.write(block);
            }
        }
    }

    /** A column of a Matlab file of level 5, packed; its lengths are true. */
    private static void packedMatlab(Path file, int zeros) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new DeflaterOutputStream(packed)) {
            int bytes = 8 * zeros;
            int[] head = {14, 56 + bytes, 6, 8, 6, 0, 5, 8, zeros, 1, 1, 1, 'x', 0, 9, bytes};
            out.write(little(head));
            byte[] block = new byte[1 << 20];
            for (int left = bytes; left > 0; left -= block.length) {
                out.write(block, 0, Math.min(left, block.length));
            }
        }
        try (OutputStream out = Files.newOutputStream(file)) {
            byte[] header = Arrays.copyOf("MATLAB 5.0 MAT-file".getBytes(StandardCharsets.US_ASCII), 128);
            header[125] = 1;
            header[126] = 'I';
            header[127] = 'M';
            out.write(header);
            out.write(little(15, packed.size()));
            packed.writeTo(out);
        }
    }

    private static byte[] little(int... numbers) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * numbers.length).order(ByteOrder.LITTLE_ENDIAN);
        Arrays.stream(numbers).forEach(bytes::putInt);
        return bytes.array();
    }

    @Test
    void recordsThatNoLoggerWritesCostThemselvesOnly() throws Exception {
        Map<String, String> expected = new LinkedHashMap<>();
        sparse(trace("sparse.csv"), 10L << 30);
        expected.put("traces/sparse.csv", "10737418240 bytes");
        zipped(trace("bomb.csv.gz"), "time [s],pressure [MPa]\n0.0,", 1L << 30);
        expected.put("traces/bomb.csv.gz", "the file has no rows of numbers");
        Files.writeString(
                trace("wide.csv"),
                "time [s],pressure [MPa]" + ",x".repeat(1_000_000) + "\n" + "0.1,".repeat(1_000_000) + "1\n");
        expected.put("traces/wide.csv", "the file has no rows of numbers");
        Files.writeString(trace("nul.csv"), goodTrace().replace("0.1000,", "0.1000\0,"));
        expected.put("traces/nul.csv", "NUL bytes");
        Files.writeString(trace("nan.csv"), goodTrace().replaceAll(",-?0\\.\\d+\n", ",NaN\n"));
        expected.put("traces/nan.csv", "rows with readings");
        Files.writeString(trace("overflow.csv"), goodTrace().replaceAll(",-?0\\.\\d+\n", ",9e999\n"));
        expected.put("traces/overflow.csv", "rows with readings");
        Files.writeString(trace("infinite.csv"), goodTrace().replaceAll(",-?0\\.\\d+\n", ",Infinity\n"));
        expected.put("traces/infinite.csv", "rows with readings");
        Files.createSymbolicLink(trace("loop.csv"), Path.of("loop.csv"));
        expected.put("traces/loop.csv", "cannot be reached");
        Files.writeString(folder.resolve("secret.csv"), goodTrace());
        Files.createSymbolicLink(trace("out.csv"), Path.of("../../secret.csv"));
        expected.put("traces/out.csv", "the path leaves the campaign folder");
        expected.put("../secret.csv", "the path leaves the campaign folder");
        expected.put("/etc/passwd", "the path leaves the campaign folder");
        expected.put("traces", "this is not an ordinary file");
        new ProcessBuilder("mkfifo", trace("pipe.csv").toString()).start().waitFor();
        expected.put("traces/pipe.csv", "this is not an ordinary file");
        Files.write(trace("empty.csv"), new byte[0]);
        expected.put("traces/empty.csv", "the file is empty");
        Files.write(trace("half.csv.gz"), new byte[] {0x1f, (byte) 0x8b, 8, 0, 0});
        expected.put("traces/half.csv.gz", "the packed file is damaged");
        packedMatlab(trace("bomb.mat"), 30 << 20);
        expected.put("traces/bomb.mat", "the record takes more memory than there is");
        packedMatlab(trace("large-bomb.mat"), 64 << 20);
        expected.put("traces/large-bomb.mat", "the compressed variable is too long");
        addFirings(expected.keySet());
        RunnableJar.Outcome outcome =
                RunnableJar.run(folder, LITTLE_MEMORY, "run", campaign.toString(), "-o", "report", "--workers", "2");
        assertThat(outcome.exitCode()).as(outcome.out() + outcome.err()).isEqualTo(1);
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out()).contains("10 points").doesNotContain("Exception", "Error", "\0", "root:");
        int number = 0;
        for (Map.Entry<String, String> each : expected.entrySet()) {
            String id = "BAD-" + ++number;
            JsonNode firing = firing(id);
            assertThat(firing.at("/status").asText())
                    .as(id + " " + each.getKey())
                    .isEqualTo("rejected");
            assertThat(firing.at("/findings/0/message").asText()).contains(each.getKey(), each.getValue());
        }
    }

    private JsonNode firing(String id) throws IOException {
        for (JsonNode firing : report().at("/firings")) {
            if (firing.at("/id").asText().equals(id)) {
                return firing;
            }
        }
        throw new AssertionError("no firing " + id);
    }

    @Test
    void mixedLineEndsAreLineEnds() throws Exception {
        String[] lines = goodTrace().split("\n");
        StringBuilder mixed = new StringBuilder();
        for (int i = 0; i < lines.length; i++) {
            mixed.append(lines[i]).append(i % 3 == 0 ? "\r\n" : i % 3 == 1 ? "\n" : "\r");
        }
        Files.writeString(trace("mixed.csv"), mixed);
        addFirings(List.of("traces/mixed.csv"));
        RunnableJar.run(folder, "run", campaign.toString(), "-o", "report", "--data-only");
        assertThat(firing("BAD-1").at("/rate")).isEqualTo(firing("NS-01").at("/rate"));
        assertThat(firing("BAD-1").at("/status").asText()).isEqualTo("used");
    }

    @Test
    void campaignFilesThatAreTooLargeAreRefusedWithAReason() throws Exception {
        String log = Files.readString(campaign.resolve("firings.csv"));
        StringBuilder million = new StringBuilder(log);
        for (int i = 0; i < 1_000_000; i++) {
            million.append("X-").append(i).append(",date,traces/NS-01.csv,bates,2,,,,,,\n");
        }
        Files.writeString(campaign.resolve("firings.csv"), million);
        refused("firings.csv: the table has more than 200000 rows");
        Files.writeString(campaign.resolve("firings.csv"), million.substring(0, 2_000_000));
        told(1, "rows cannot be used as they are; 10 can.");
        Files.delete(campaign.resolve("firings.csv"));
        sparse(campaign.resolve("firings.csv"), 10L << 30);
        refused("firings.csv: the file is too large");
        Files.delete(campaign.resolve("campaign.yaml"));
        sparse(campaign.resolve("campaign.yaml"), 10L << 30);
        refused("campaign.yaml: the file is too large");
    }

    private void refused(String words) throws Exception {
        told(2, words);
    }

    private void told(int exitCode, String words) throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.run(folder, LITTLE_MEMORY, "check", campaign.toString());
        assertThat(outcome.exitCode()).as(words + outcome.err()).isEqualTo(exitCode);
        assertThat(outcome.out().length()).isLessThan(20_000);
        assertThat(outcome.out()).contains(words).doesNotContain("Exception", "OutOfMemory");
        assertThat(outcome.err()).isEmpty();
    }

    @Test
    void aRecordThatVanishesOrMayNotBeReadCostsItself() throws Exception {
        Files.copy(trace("NS-01.csv"), trace("closed.csv"));
        Files.setPosixFilePermissions(trace("closed.csv"), PosixFilePermissions.fromString("---------"));
        addFirings(List.of("traces/closed.csv", "traces/gone.csv"));
        RunnableJar.Outcome outcome = asAnOrdinaryUser("run", campaign.toString(), "--json");
        assertThat(outcome.exitCode()).as(outcome.err()).isEqualTo(1);
        JsonNode document = JsonMapper.builder().build().readTree(outcome.out());
        assertThat(document.at("/firings/10/findings/0/message").asText())
                .contains("traces/closed.csv", "there is no permission to read the file");
        assertThat(document.at("/firings/11/findings/0/message").asText())
                .contains("traces/gone.csv", "there is no such file");
        assertThat(document.at("/formulations/0/points")).hasSize(10);
    }

    @Test
    void aFolderThatMayNotBeWrittenIsToldAndNothingChanges() throws Exception {
        Path closed = Files.createDirectory(folder.resolve("closed"));
        RunnableJar.run(folder, "run", campaign.toString(), "-o", "closed/report", "--data-only");
        var before = RunnableJar.files(closed);
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
        RunnableJar.Outcome outcome = asAnOrdinaryUser("run", campaign.toString(), "-o", "closed/report");
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwxr-xr-x"));
        assertThat(outcome.exitCode()).isEqualTo(3);
        assertThat(outcome.err())
                .contains("closed/report")
                .contains("no permission to write")
                .doesNotContain("Exception");
        assertThat(RunnableJar.files(closed)).isEqualTo(before);
    }

    /** The same for root, who may read and write everything: then as the user that owns nothing. */
    private RunnableJar.Outcome asAnOrdinaryUser(String... words) throws Exception {
        List<String> command = new ArrayList<>();
        if (System.getProperty("user.name").equals("root")) {
            assumeTrue(Files.isExecutable(Path.of("/usr/bin/setpriv")), "util-linux is there");
            command.addAll(List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"));
        }
        Path jar = Files.copy(RunnableJar.JAR, folder.resolve("burnlaw.jar"));
        Files.setPosixFilePermissions(jar, PosixFilePermissions.fromString("rw-r--r--"));
        command.addAll(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", jar.toString()));
        command.addAll(List.of(words));
        return RunnableJar.execute(folder, command);
    }

    @Test
    void aFullDiskLeavesTheEarlierReport() throws Exception {
        RunnableJar.run(folder, "run", campaign.toString(), "-o", "report", "--data-only");
        var before = RunnableJar.files(folder.resolve("report"));
        // no file may grow beyond 40 blocks of 512 bytes: writing fails as on a disk that is full
        RunnableJar.Outcome outcome = RunnableJar.execute(
                folder,
                List.of(
                        "/bin/sh",
                        "-c",
                        "ulimit -f 40; exec \"$0\" \"$@\" > /dev/null",
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:-UsePerfData",
                        "-jar",
                        RunnableJar.JAR.toString(),
                        "run",
                        campaign.toString(),
                        "-o",
                        "report"));
        assertThat(outcome.exitCode()).as(outcome.err()).isEqualTo(3);
        assertThat(outcome.err()).startsWith("burnlaw: ").contains("report").doesNotContain("Exception", "at java");
        assertThat(RunnableJar.files(folder.resolve("report"))).isEqualTo(before);
        try (Stream<Path> beside = Files.list(folder)) {
            assertThat(beside.map(path -> path.getFileName().toString()))
                    .containsExactlyInAnyOrder("campaign", "report");
        }
    }
}
