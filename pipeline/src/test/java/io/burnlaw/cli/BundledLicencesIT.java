package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;

/** The jar carries the licence of each library in it, and nothing that it does not need. */
class BundledLicencesIT {

    private static final String FOLDER = "META-INF/licenses/";

    /** Written by the build, a line each: group:name:jar:version:scope. */
    private static final Path BUNDLED = Path.of("target", "bundled.txt");

    @Test
    void eachLibraryHasItsLicence() throws IOException {
        try (ZipFile jar = new ZipFile(RunnableJar.JAR.toFile())) {
            Set<String> files = jar.stream().map(each -> each.getName()).collect(Collectors.toSet());
            String readme = text(jar, "README.txt");
            Set<String> withoutOne = Set.of(readme.substring(readme.indexOf("2.0:\n\n"))
                    .replace("2.0:", "")
                    .strip()
                    .split(",\\s+"));
            List<String> named = new ArrayList<>();
            List<String> missing = new ArrayList<>();
            for (String library : libraries()) {
                String[] parts = library.split(":");
                String own = FOLDER + parts[1] + "-" + parts[3] + "/";
                boolean brings = files.stream().anyMatch(each -> each.startsWith(own + "LICENSE"));
                if (!brings) {
                    named.add(parts[1]);
                }
                if (brings == withoutOne.contains(parts[1])) {
                    missing.add(library);
                }
            }
            assertThat(missing)
                    .as("with a licence in %s, or named in its README.txt", FOLDER)
                    .isEmpty();
            assertThat(withoutOne).containsExactlyInAnyOrderElementsOf(named);
            assertThat(text(jar, "Apache-2.0.txt")).contains("Apache License", "END OF TERMS AND CONDITIONS");
        }
    }

    /** Notices have to go on with the work: section 4(d) of the Apache License, Version 2.0. */
    @Test
    void noticesAreCarriedOn() throws IOException {
        try (ZipFile jar = new ZipFile(RunnableJar.JAR.toFile())) {
            assertThat(text(jar, "commons-math3-3.6.1/NOTICE.txt")).contains("Apache Commons Math");
            assertThat(jar.stream().filter(each -> each.getName().matches(FOLDER + ".*/NOTICE.*")))
                    .hasSizeGreaterThan(10);
        }
    }

    @Test
    void theJarIsSmall() throws IOException {
        assumeTrue(
                Files.exists(Path.of(System.getProperty("java.home"), "jmods", "java.base.jmod")),
                "without the jmods of the JDK the jar is not shrunk");

        // 12 MB can be sent as an attachment; what nothing calls would make it 17
        assertThat(Files.size(RunnableJar.JAR)).isLessThan(12_000_000);
    }

    private static List<String> libraries() throws IOException {
        List<String> libraries = Files.readAllLines(BUNDLED).stream()
                .map(line -> line.strip().split(" ")[0])
                .filter(line -> line.split(":").length == 5)
                .toList();
        assertThat(libraries).hasSizeGreaterThan(30);
        return libraries;
    }

    private static String text(ZipFile jar, String name) throws IOException {
        return new String(jar.getInputStream(jar.getEntry(FOLDER + name)).readAllBytes(), StandardCharsets.UTF_8);
    }
}
