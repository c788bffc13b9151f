package io.burnlaw.report.html;

import io.burnlaw.report.chart.Figure;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A picture for a page, and as a separate file.
 *
 * @param fileName in the folder charts
 */
public record DrawnFigure(String fileName, Figure figure) {

    static DrawnFigure of(String name, Figure figure) {
        return new DrawnFigure(name + ".svg", figure);
    }

    static @Nullable DrawnFigure ifAny(String name, Optional<Figure> figure) {
        return figure.map(drawn -> of(name, drawn)).orElse(null);
    }

    /** {@return the svg element} */
    public String html() {
        return figure.inline();
    }
}
