package io.burnlaw.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Which files of a folder were written by this program: its list of them, in the form that sha256sum checks. */
final class OwnFiles {

    private OwnFiles() {}

    static Optional<Map<String, String>> list(Path folder, OwnFolder.Kind kind) throws IOException {
        Path list = folder.resolve(kind.list());
        if (!Files.isRegularFile(list)) {
            return Optional.empty();
        }
        Map<String, String> files = new TreeMap<>();
        for (String line : new String(Files.readAllBytes(list), StandardCharsets.UTF_8).split("\n")) {
            if (line.length() > 66) {
                files.put(line.substring(66), line.substring(0, 64));
            }
        }
        return Optional.of(files);
    }

    /** Without a list nothing is known to be ours, and everything is kept. */
    static boolean ours(Optional<Map<String, String>> listed, String path, Path file, BasicFileAttributes attributes)
            throws IOException {
        String hash = listed.map(files -> files.get(path)).orElse(null);
        return hash != null && attributes.isRegularFile() && hash.equals(hash(file));
    }

    static String relative(Path folder, Path file) {
        return folder.relativize(file).toString().replace('\\', '/');
    }

    static String hash(Path file) throws IOException {
        MessageDigest digest = sha256();
        try (InputStream in = Files.newInputStream(file);
                OutputStream to = new DigestOutputStream(OutputStream.nullOutputStream(), digest)) {
            in.transferTo(to);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Writes into a file and takes its checksum. */
    static final class Hashed extends OutputStream {

        private final DigestOutputStream out;
        private final String path;
        private final Map<String, String> into;

        Hashed(OutputStream file, String path, Map<String, String> into) {
            this.out = new DigestOutputStream(new BufferedOutputStream(file), sha256());
            this.path = path;
            this.into = into;
        }

        @Override
        public void write(int b) throws IOException {
            out.write(b);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
        }

        @Override
        public void close() throws IOException {
            out.close();
            into.put(path, HexFormat.of().formatHex(out.getMessageDigest().digest()));
        }
    }
}
