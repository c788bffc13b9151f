package io.burnlaw.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote into the jar. */
final class Version implements IVersionProvider {

    static String number() {
        Properties properties = new Properties();
        try (InputStream in = Version.class.getResourceAsStream("version.properties")) {
            properties.load(in);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return properties.getProperty("version");
    }

    @Override
    public String[] getVersion() {
        return new String[] {"burnlaw " + number()};
    }
}
