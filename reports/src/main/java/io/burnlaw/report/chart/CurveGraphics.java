package io.burnlaw.report.chart;

import java.awt.Paint;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;

/**
 * Takes the pieces of a curve together: XChart strokes it piece by piece, and an element of the document for each of some
 * hundred pieces is most of the time that a picture takes. The first piece stands for the curve in the document; the
 * points of all stand in {@link #curves}.
 */
final class CurveGraphics extends SVGGraphics2D {

    /** Points of each curve as the data of a path, in the order of the lines in the document. */
    private final List<String> curves = new ArrayList<>();

    private final StringBuilder path = new StringBuilder();
    private @Nullable Line2D first;
    private @Nullable Line2D last;
    private @Nullable Stroke stroke;
    private @Nullable Paint paint;

    CurveGraphics(SVGGeneratorContext context) {
        super(context, false);
    }

    /** {@return points of each curve, in the order of the document; complete once its root was asked for} */
    List<String> curves() {
        return curves;
    }

    @Override
    public void draw(Shape shape) {
        if (!(shape instanceof Line2D piece)) {
            end();
            super.draw(shape);
            return;
        }
        Line2D before = last;
        boolean goesOn = before != null
                && before.getX2() == piece.getX1()
                && before.getY2() == piece.getY1()
                && getStroke().equals(stroke)
                && getPaint().equals(paint);
        if (!goesOn) {
            end();
            first = (Line2D) piece.clone();
            stroke = getStroke();
            paint = getPaint();
            path.append('M');
            place(piece.getX1(), piece.getY1());
        }
        path.append('L');
        place(piece.getX2(), piece.getY2());
        last = (Line2D) piece.clone();
    }

    private void place(double x, double y) {
        path.append(Svg.number(x)).append(' ').append(Svg.number(y));
    }

    private void end() {
        Line2D begun = first;
        if (begun == null) {
            return;
        }
        first = null;
        last = null;
        curves.add(path.toString());
        path.setLength(0);
        Stroke now = getStroke();
        Paint ink = getPaint();
        setStroke(stroke);
        setPaint(paint);
        super.draw(begun);
        setStroke(now);
        setPaint(ink);
    }

    @Override
    public void fill(Shape shape) {
        end();
        super.fill(shape);
    }

    @Override
    public Element getRoot() {
        end();
        return super.getRoot();
    }
}
