package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.reading.CampaignFolder;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.GZIPInputStream;

/** The bytes of a record, with their checksum made on the way. */
final class RecordFile implements Closeable {

    /** Larger files are no record of a firing. */
    private static final long MOST_BYTES = 4L << 30;

    /** Records that have to be held whole are smaller, packed and unpacked. */
    static final int MOST_HELD = 256 << 20;

    private static final int BUFFER = 1 << 16;

    private final String path;
    private final DigestInputStream digested;
    private final BufferedInputStream raw;
    private final byte[] mark;
    private long bytes;

    /** A file that grows faster than it is read would never end, so no more is read than it had when it was found. */
    private RecordFile(String path, InputStream in, long size, MessageDigest digest) throws IOException {
        this.path = path;
        this.digested = new DigestInputStream(in, digest);
        this.raw = new BufferedInputStream(
                new InputStream() {
                    @Override
                    public int read() throws IOException {
                        int read = bytes < size ? digested.read() : -1;
                        bytes += read < 0 ? 0 : 1;
                        return read;
                    }

                    @Override
                    public int read(byte[] into, int from, int length) throws IOException {
                        int most = (int) Math.min(length, size - bytes);
                        int read = most > 0 ? digested.read(into, from, most) : -1;
                        bytes += Math.max(0, read);
                        return read;
                    }
                },
                BUFFER);
        raw.mark(BUFFER);
        this.mark = raw.readNBytes(20);
        raw.reset();
    }

    static RecordFile open(String path, CampaignFolder.Location.Found found) throws IOException, Refusal {
        if (found.bytes() > MOST_BYTES) {
            throw Refusal.of(
                    path,
                    0,
                    "the file has " + found.bytes() + " bytes",
                    "at most " + MOST_BYTES,
                    "check that this is the record, and cut it to the firing");
        }
        InputStream in = Files.newInputStream(found.file());
        try {
            return new RecordFile(path, in, found.bytes(), MessageDigest.getInstance("SHA-256"));
        } catch (NoSuchAlgorithmException e) {
            in.close();
            throw new IllegalStateException("every Java platform has SHA-256", e);
        } catch (IOException e) {
            in.close();
            throw e;
        }
    }

    /** Whether the file begins with these bytes. */
    boolean begins(int... expected) {
        for (int i = 0; i < expected.length; i++) {
            if (mark.length <= i || (mark[i] & 0xFF) != expected[i]) {
                return false;
            }
        }
        return true;
    }

    boolean isPackage() {
        return begins('P', 'K', 3, 4);
    }

    boolean isTdms() {
        return begins('T', 'D', 'S', 'm');
    }

    boolean isMatlab() {
        return begins('M', 'A', 'T', 'L', 'A', 'B', ' ', '5', '.', '0');
    }

    boolean isHdf5() {
        return begins(0x89, 'H', 'D', 'F') || begins('M', 'A', 'T', 'L', 'A', 'B', ' ', '7', '.', '3');
    }

    /** The record as bytes of text, unpacked. */
    InputStream text() throws IOException, Refusal {
        InputStream unpacked = begins(0x1F, 0x8B) ? new GZIPInputStream(raw, BUFFER) : raw;
        if (begins(0xFF, 0xFE)) {
            return recoded(StandardCharsets.UTF_16LE);
        }
        return begins(0xFE, 0xFF) ? recoded(StandardCharsets.UTF_16BE) : unpacked;
    }

    /** The whole file. */
    byte[] whole() throws IOException, Refusal {
        byte[] all = raw.readNBytes(MOST_HELD);
        if (raw.read() >= 0) {
            throw Refusal.of(
                    path,
                    0,
                    "the file is too large for its kind",
                    "at most " + MOST_HELD + " bytes",
                    "export the record as text");
        }
        return all;
    }

    private InputStream recoded(Charset charset) throws IOException, Refusal {
        return new ByteArrayInputStream(
                new String(whole(), charset).replace("\uFEFF", "").getBytes(StandardCharsets.UTF_8));
    }

    /** Reads what is left, so that the checksum is that of the whole file. */
    InputFile finish() throws IOException {
        byte[] rest = new byte[BUFFER];
        while (raw.read(rest) >= 0) {
            continue;
        }
        String sha256 = HexFormat.of().formatHex(digested.getMessageDigest().digest());
        return new InputFile(path, sha256, bytes);
    }

    @Override
    public void close() throws IOException {
        raw.close();
        digested.close();
    }
}
