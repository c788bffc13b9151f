package io.burnlaw.publish.reading;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Characterization.Input;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A published document and where it came from.
 *
 * @param file burnlaw.json, or a page that carries it: path as the user knows it, size and checksum
 */
public record PublishedSource(Characterization document, Input file) {

    private static final Set<String> USUAL_NAMES = Set.of("burnlaw.json", "index.html");

    /** {@return what the campaigns of all say; nothing where they differ} */
    static <T> @Nullable T agreed(List<PublishedSource> sources, Function<CampaignSummary, @Nullable T> what) {
        T first = what.apply(sources.get(0).document().campaign());
        boolean alike = first != null
                && sources.stream()
                        .allMatch(
                                each -> first.equals(what.apply(each.document().campaign())));
        return alike ? first : null;
    }

    /** A short name: the report's folder, where the file is called as all are. */
    String label() {
        Path path = Path.of(file.path());
        Path parent = path.getParent();
        Path name = path.getFileName();
        boolean usual = name != null && USUAL_NAMES.contains(name.toString());
        Path telling = usual && parent != null && parent.getFileName() != null ? parent.getFileName() : name;
        return telling == null || telling.toString().isEmpty() ? file.path() : telling.toString();
    }
}
