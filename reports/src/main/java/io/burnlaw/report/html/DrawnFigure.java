package io.burnlaw.report.html;

import io.burnlaw.report.chart.Figure;
import io.burnlaw.report.chart.Frame;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A picture as a page shows it: drawn for a wide and for a narrow screen, of which the style sheet shows one, and as a
 * file of its own.
 *
 * @param fileName in the folder charts
 * @param wide for screens and paper
 * @param narrow for phones
 */
public record DrawnFigure(String fileName, Figure wide, Figure narrow) {

    static DrawnFigure of(String name, Function<Frame, Figure> draw) {
        return new DrawnFigure(name + ".svg", draw.apply(Frame.WIDE), draw.apply(Frame.NARROW));
    }

    static @Nullable DrawnFigure ifAny(String name, Function<Frame, Optional<Figure>> draw) {
        Optional<Figure> wide = draw.apply(Frame.WIDE);
        Optional<Figure> narrow = draw.apply(Frame.NARROW);
        return wide.isPresent() && narrow.isPresent() ? new DrawnFigure(name + ".svg", wide.get(), narrow.get()) : null;
    }

    /** {@return both svg elements} */
    public String html() {
        return wide.inline("wide") + narrow.inline("narrow");
    }
}
