package io.burnlaw.report.chart;

/**
 * The sheet on which a picture is drawn. Its units are CSS pixels of a phone that is a little wider than most: there the
 * words are as large as the layout leaves room for. On a larger screen and on paper the sheet grows, and the style sheet
 * keeps words and lines from growing with it.
 *
 * @param right margin right of the plot
 */
record Frame(double width, double left, double right, double height) {

    /** The usual one. */
    static final Frame SHEET = new Frame(420, 44, 12, 225);

    /** The same sheet with a part of this one's height. */
    Frame lower(double share) {
        return new Frame(width, left, right, Math.rint(height * share));
    }

    double plotWidth() {
        return width - left - right;
    }
}
