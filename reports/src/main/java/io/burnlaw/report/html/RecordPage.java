package io.burnlaw.report.html;

import io.burnlaw.report.chart.TraceChart;
import io.burnlaw.report.document.Firing;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A page about one record without a campaign.
 *
 * @param firing  its trace, events and findings; a rate where its grain is known
 * @param readAs  what the file was taken for, as sentences
 * @param command what to type next, where something is to be done
 */
public record RecordPage(Firing firing, List<String> readAs, List<Fact> facts, String command, String version) {

    public RecordPage {
        readAs = List.copyOf(readAs);
        facts = List.copyOf(facts);
    }

    /**
     * One figure of the record.
     *
     * @param text with its unit
     */
    public record Fact(String name, String text) {}

    /** {@return the picture of the trace; absent where there is nothing to draw} */
    public @Nullable String trace() {
        return TraceChart.draw(firing).map(figure -> figure.inline()).orElse(null);
    }
}
