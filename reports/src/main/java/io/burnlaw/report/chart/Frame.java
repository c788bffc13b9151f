package io.burnlaw.report.chart;

/**
 * The sheet on which a picture is drawn, in CSS pixels. Each picture is drawn for a wide and for a narrow screen, since
 * a wide one scaled down to a phone has words too small to read.
 *
 * @param width  of the sheet
 * @param left   of the plot
 * @param right  margin right of the plot
 * @param height of the plot
 * @param leaders whether there is room right of the plot for words beside the curves
 */
public record Frame(double width, double left, double right, double height, boolean leaders) {

    /** For screens and paper. */
    public static final Frame WIDE = new Frame(720, 46, 146, 380, true);

    /** For phones. */
    public static final Frame NARROW = new Frame(340, 42, 12, 250, false);

    /**
     * The same sheet with another height.
     *
     * @param share of this one's
     * @return the sheet
     */
    public Frame lower(double share) {
        return new Frame(width, left, right, Math.rint(height * share), leaders);
    }

    /**
     * The same sheet for a picture that has no words right of its plot.
     *
     * @return the sheet
     */
    public Frame plain() {
        return new Frame(width, left, 16, height, false);
    }

    double plotWidth() {
        return width - left - right;
    }
}
