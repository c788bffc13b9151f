package io.burnlaw.report.chart;

/**
 * A finished picture.
 *
 * @param description what it shows, in words, for those who do not see it
 */
public record Figure(double width, double height, String description, String body) {

    /** A file is drawn so much larger than a phone shows it; its words and lines are not. */
    private static final double LARGE = 1.7;

    private static final String ENLARGED =
            "text{font-size:8.6px}path,line,rect,circle{vector-effect:non-scaling-stroke}";

    private static final String FONT = "font-family=\"system-ui, sans-serif\" font-size=\"14\"";

    /** Of an element whose class has it from the style sheet of the page. */
    private static final String COLOUR = " (?:fill|stroke)=\"#[0-9a-f]{6}\"(?=(?: stroke=\"#[0-9a-f]{6}\")? class=)";

    /** The picture as an element of a page, whose style sheet colours it. */
    public String inline() {
        return "<svg class=\"chart\" viewBox=\"" + viewBox() + "\" width=\"" + Svg.number(width)
                + "\" height=\"" + Svg.number(height) + "\" role=\"img\" aria-label=\"" + Svg.escape(description)
                + "\" "
                + FONT + ">" + body.replaceAll(COLOUR, "") + "</svg>";
    }

    /** {@return the picture as a file of its own, that follows light and dark where the viewer does} */
    public String file() {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\""
                + viewBox()
                + "\" width=\"" + Svg.number(LARGE * width) + "\" height=\"" + Svg.number(LARGE * height)
                + "\" role=\"img\" " + FONT + ">\n<title>" + Svg.escape(description) + "</title>\n<style>"
                + Ink.styleSheet()
                + ENLARGED + "</style>\n"
                + new Svg().rect(0, 0, width, height, Ink.PAPER, 1) + body + "\n</svg>\n";
    }

    private String viewBox() {
        return "0 0 " + Svg.number(width) + " " + Svg.number(height);
    }
}
