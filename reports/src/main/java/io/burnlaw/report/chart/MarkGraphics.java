package io.burnlaw.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import org.apache.xmlgraphics.java2d.AbstractGraphics2D;
import org.apache.xmlgraphics.java2d.GraphicContext;
import org.jspecify.annotations.Nullable;

/**
 * Writes what XChart paints as SVG: what is in a stand-in colour of {@link Ink}, and nothing of XChart's own ground. The
 * pieces of a curve become one path, since a dash that begins anew with each piece is none; marks of one look that follow
 * each other share a group.
 */
final class MarkGraphics extends AbstractGraphics2D {

    private final StringBuilder svg = new StringBuilder();

    /** Attributes of the group that is open; empty while none is. */
    private String look = "";

    /** The curve whose path is open. */
    private @Nullable Curve curve;

    private record Curve(Paint paint, Stroke stroke, double x, double y) {

        boolean goesOn(Paint nextPaint, Stroke nextStroke, Line2D piece) {
            return x == piece.getX1() && y == piece.getY1() && paint.equals(nextPaint) && stroke.equals(nextStroke);
        }
    }

    MarkGraphics() {
        super(false);
        gc = new GraphicContext();
    }

    /** {@return the elements, with the sheet's upper left corner at 0, 0} */
    String svg() {
        group("");
        return svg.toString();
    }

    @Override
    public void draw(Shape shape) {
        Ink ink = Ink.of(getColor());
        if (ink == null) {
            return;
        }
        if (!(shape instanceof Line2D piece)) {
            group(stroked(ink, (BasicStroke) getStroke()));
            path(shape);
            return;
        }
        if (curve == null || !curve.goesOn(getPaint(), getStroke(), piece)) {
            group(stroked(ink, (BasicStroke) getStroke()));
            svg.append("<path d=\"M");
            place(piece.getX1(), piece.getY1());
        }
        svg.append('L');
        place(piece.getX2(), piece.getY2());
        curve = new Curve(getPaint(), getStroke(), piece.getX2(), piece.getY2());
    }

    @Override
    public void fill(Shape shape) {
        Ink ink = Ink.of(getColor());
        if (ink == null) {
            return;
        }
        group(Svg.fill(ink) + opacity("fill-opacity"));
        if (shape instanceof Ellipse2D circle) {
            svg.append("<circle cx=\"")
                    .append(Svg.number(circle.getCenterX()))
                    .append("\" cy=\"")
                    .append(Svg.number(circle.getCenterY()))
                    .append("\" r=\"")
                    .append(Svg.number(circle.getWidth() / 2))
                    .append("\"/>");
        } else if (shape instanceof Rectangle2D square) {
            svg.append("<rect x=\"")
                    .append(Svg.number(square.getX()))
                    .append("\" y=\"")
                    .append(Svg.number(square.getY()))
                    .append("\" width=\"")
                    .append(Svg.number(square.getWidth()))
                    .append("\" height=\"")
                    .append(Svg.number(square.getHeight()))
                    .append("\"/>");
        } else {
            path(shape);
        }
    }

    /** Ends the curve, and the group if the next element looks otherwise. */
    private void group(String next) {
        if (curve != null) {
            svg.append("\"/>");
            curve = null;
        }
        if (!next.equals(look)) {
            svg.append(look.isEmpty() ? "" : "</g>").append(next.isEmpty() ? "" : "<g " + next + ">");
            look = next;
        }
    }

    private String stroked(Ink ink, BasicStroke stroke) {
        StringBuilder attributes = new StringBuilder("fill=\"none\" ")
                .append(Svg.stroke(ink))
                .append(opacity("stroke-opacity"))
                .append(" stroke-width=\"")
                .append(Svg.number(stroke.getLineWidth()))
                .append('"');
        if (stroke.getEndCap() == BasicStroke.CAP_ROUND) {
            attributes.append(" stroke-linecap=\"round\" stroke-linejoin=\"round\"");
        }
        float[] dash = stroke.getDashArray();
        if (dash != null) {
            attributes
                    .append(" stroke-dasharray=\"")
                    .append(Svg.number(dash[0]))
                    .append(' ')
                    .append(Svg.number(dash[1]))
                    .append('"');
        }
        return attributes.toString();
    }

    private String opacity(String attribute) {
        int alpha = getColor().getAlpha();
        return alpha == 255 ? "" : " " + attribute + "=\"" + Svg.number(alpha / 255.0) + "\"";
    }

    private void path(Shape shape) {
        svg.append("<path d=\"");
        double[] at = new double[6];
        for (PathIterator piece = shape.getPathIterator(null); !piece.isDone(); piece.next()) {
            switch (piece.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> svg.append('M');
                case PathIterator.SEG_LINETO -> svg.append('L');
                case PathIterator.SEG_CLOSE -> svg.append('Z');
                default -> throw unused();
            }
            if (svg.charAt(svg.length() - 1) != 'Z') {
                place(at[0], at[1]);
            }
        }
        svg.append("\"/>");
    }

    private void place(double x, double y) {
        Svg.number(svg, x);
        svg.append(' ');
        Svg.number(svg, y);
    }

    /** A mark is made of lines and areas with straight edges: whatever else is asked for is not in this picture. */
    private static UnsupportedOperationException unused() {
        return new UnsupportedOperationException("marks are lines, circles, squares and polygons");
    }

    /** How pixels are smoothed: here are none. */
    @Override
    public void setRenderingHint(RenderingHints.Key hint, Object value) {}

    @Override
    public Graphics create() {
        throw unused();
    }

    @Override
    public void dispose() {}

    @Override
    public void setXORMode(Color other) {
        throw unused();
    }

    @Override
    public FontMetrics getFontMetrics(Font font) {
        throw unused();
    }

    @Override
    public void drawString(String words, float x, float y) {
        throw unused();
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int right, int down) {
        throw unused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        throw unused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        throw unused();
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform place) {
        throw unused();
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform place) {
        throw unused();
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        throw unused();
    }
}
