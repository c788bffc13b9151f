package io.burnlaw.trace.reading;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.CampaignFolder;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A record that another program writes, cuts or deletes between being found and being read to its end. */
class ChangingFileTest {

    private static final TraceSettings GAUGE = new TraceSettings(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(PressureKind.GAUGE),
            List.of(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    @TempDir
    private Path folder;

    private static byte[] record(int rows) {
        StringBuilder text = new StringBuilder("time [s],pressure [MPa]\n");
        for (int i = 0; i < rows; i++) {
            text.append(i / 1000.0).append(',').append(i % 7).append('\n');
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private CampaignFolder.Location.Found found(String name, byte[] bytes) throws IOException {
        Files.write(folder.resolve(name), bytes);
        return (CampaignFolder.Location.Found) new CampaignFolder(folder).locate(name);
    }

    private static TraceReading read(CampaignFolder.Location.Found found) {
        return TraceReader.read(found, "F1", found.file().getFileName().toString(), GAUGE, 101_325);
    }

    private static String refusal(CampaignFolder.Location.Found found) {
        TraceReading reading = read(found);
        assertThat(reading).isInstanceOf(TraceReading.Unreadable.class);
        return ((TraceReading.Unreadable) reading).findings().get(0).message();
    }

    @Test
    void aFileThatStaysAsItWasFoundIsRead() throws IOException {
        assertThat(read(found("t.csv", record(500)))).isInstanceOf(TraceReading.Read.class);
    }

    @Test
    void aFileThatGrowsIsRefused() throws IOException {
        CampaignFolder.Location.Found found = found("t.csv", record(500));
        Files.write(found.file(), "0.5,1\n".getBytes(StandardCharsets.UTF_8), StandardOpenOption.APPEND);
        assertThat(refusal(found)).contains("t.csv", "the file changed while it was read", "wait until the logger");
    }

    @Test
    void aFileThatIsCutIsRefused() throws IOException {
        CampaignFolder.Location.Found found = found("t.csv", record(500));
        Files.write(found.file(), record(400));
        assertThat(refusal(found)).contains("t.csv", "the file changed while it was read");
    }

    @Test
    void aPackedFileThatGrowsIsRefused() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(record(500));
        }
        CampaignFolder.Location.Found found = found("t.csv.gz", packed.toByteArray());
        assertThat(read(found)).isInstanceOf(TraceReading.Read.class);
        Files.write(found.file(), packed.toByteArray(), StandardOpenOption.APPEND);
        assertThat(refusal(found)).contains("t.csv.gz", "the file changed while it was read");
    }

    @Test
    void aFileThatVanishesIsRefused() throws IOException {
        CampaignFolder.Location.Found found = found("t.csv", record(500));
        Files.delete(found.file());
        assertThat(refusal(found)).contains("t.csv", "the file cannot be read", "check that it is still there");
    }

    @Test
    void aWriterWithoutEndDoesNotKeepTheReader() throws Exception {
        CampaignFolder.Location.Found found = found("t.csv", record(20_000));
        Thread writer = new Thread(() -> {
            byte[] more = record(20_000);
            while (!Thread.currentThread().isInterrupted()
                    && found.file().toFile().length() < 200L << 20) {
                try {
                    Files.write(found.file(), more, StandardOpenOption.APPEND);
                } catch (IOException interrupted) {
                    return;
                }
            }
        });
        writer.start();
        try {
            while (found.file().toFile().length() == found.bytes()) {
                Thread.onSpinWait();
            }
            assertThat(refusal(found)).contains("the file changed while it was read");
        } finally {
            writer.interrupt();
            writer.join();
        }
    }
}
