package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Problem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** Small files, read whole. */
final class FileBytes {

    private FileBytes() {}

    /**
     * Reads a file.
     *
     * @param most     bytes that are read at most
     * @param problems where what is wrong is added
     * @return its bytes; empty where it is too large, vanished or cannot be read
     */
    static Optional<byte[]> read(String path, CampaignFolder.Location.Found found, long most, List<Problem> problems) {
        if (found.bytes() > most) {
            problems.add(tooLarge(path, found.bytes(), most));
            return Optional.empty();
        }
        try (InputStream in = Files.newInputStream(found.file())) {
            byte[] bytes = in.readNBytes((int) most + 1);
            if (bytes.length > most) {
                problems.add(tooLarge(path, bytes.length, most));
                return Optional.empty();
            }
            return Optional.of(bytes);
        } catch (IOException e) {
            problems.add(new Problem(
                    path, 0, "", "the file cannot be read", "", "a readable file", "check that it is still there"));
            return Optional.empty();
        }
    }

    private static Problem tooLarge(String path, long bytes, long most) {
        return new Problem(
                path,
                0,
                "",
                "the file is too large",
                bytes + " bytes",
                "at most " + most + " bytes",
                "check that this is the right file");
    }

    static InputFile input(String path, byte[] bytes) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
            return new InputFile(path, HexFormat.of().formatHex(digest), bytes.length);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
