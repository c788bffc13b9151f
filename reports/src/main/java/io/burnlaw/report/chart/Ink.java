package io.burnlaw.report.chart;

import java.awt.Color;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The colours of the pictures, by role. The series colours are the palette of Okabe and Ito (Color Universal Design,
 * 2008), in which people with any colour vision tell them apart; the dark theme takes its lighter members.
 *
 * <p>A mark is painted in a stand-in colour that names the role; {@link MarkGraphics} turns it into a class, so that a
 * style sheet decides, and a plain attribute for viewers that know no style sheets.
 */
public enum Ink {
    /** First series. */
    S1("#0072b2", "#56b4e9"),
    /** Second series. */
    S2("#d55e00", "#e69f00"),
    /** Third series. */
    S3("#009e73", "#009e73"),
    /** Fourth series. */
    S4("#cc79a7", "#cc79a7"),
    /** Fifth series, and text. */
    TEXT("#1c2024", "#e8e6e1"),
    /** What stands behind: single burns, ticks, notes. */
    MUTED("#626a72", "#a3a9af"),
    /** Grid lines. */
    GRID("#dcdfe2", "#363b41"),
    /** The ground. */
    PAPER("#ffffff", "#15181b");

    private static final Ink[] SERIES = {S1, S2, S3, S4, TEXT};
    private static final Ink[] INKS = values();
    private static final String STYLE_SHEET = makeStyleSheet();

    private final String light;
    private final String dark;
    private final String key;
    private final String fill;
    private final String stroke;

    Ink(String light, String dark) {
        this.light = light;
        this.dark = dark;
        this.key = name().toLowerCase(Locale.ROOT);
        this.fill = "fill=\"" + light + "\" class=\"f-" + key + "\"";
        this.stroke = "stroke=\"" + light + "\" class=\"s-" + key + "\"";
    }

    /**
     * The colour of a series; after the last one they begin again, told apart by marker and dash.
     *
     * @param number of the series, from 0
     */
    public static Ink series(int number) {
        return SERIES[number % SERIES.length];
    }

    /** {@return the name of the role as style sheets use it} */
    public String key() {
        return key;
    }

    /** {@return the colour on light ground, as #rrggbb} */
    public String light() {
        return light;
    }

    /** {@return the colour on dark ground, as #rrggbb} */
    public String dark() {
        return dark;
    }

    /** The attributes of what is filled with it. */
    String fill() {
        return fill;
    }

    /** The attributes of what is drawn with it. */
    String stroke() {
        return stroke;
    }

    /** {@return the rules that give every role its colour, for light and dark} */
    public static String styleSheet() {
        return STYLE_SHEET;
    }

    private static String makeStyleSheet() {
        StringBuilder rules = new StringBuilder();
        StringBuilder variables = new StringBuilder();
        StringBuilder darkVariables = new StringBuilder();
        for (Ink ink : values()) {
            variables
                    .append("--ink-")
                    .append(ink.key())
                    .append(":")
                    .append(ink.light)
                    .append(";");
            darkVariables
                    .append("--ink-")
                    .append(ink.key())
                    .append(":")
                    .append(ink.dark)
                    .append(";");
            rules.append(".f-")
                    .append(ink.key())
                    .append("{fill:var(--ink-")
                    .append(ink.key())
                    .append(")}");
            rules.append(".s-")
                    .append(ink.key())
                    .append("{stroke:var(--ink-")
                    .append(ink.key())
                    .append(")}");
        }
        return ":root{" + variables + "}\n@media (prefers-color-scheme:dark){:root{" + darkVariables + "}}\n"
                + "@media print{:root{" + variables + "}}\n" + rules + ".rim{paint-order:stroke}\n";
    }

    /** The stand-in with which XChart paints. */
    Color standIn(int opacity) {
        return new Color(ordinal() + 1, 0, 1, opacity);
    }

    /** The role for which a colour stands; null for any other colour, and for one that does not show. */
    static @Nullable Ink of(Color painted) {
        for (Ink ink : INKS) {
            if (painted.getRed() == ink.ordinal() + 1
                    && painted.getGreen() == 0
                    && painted.getBlue() == 1
                    && painted.getAlpha() > 0) {
                return ink;
            }
        }
        return null;
    }
}
