package io.burnlaw.report.chart;

import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * What XChart painted, as SVG text: without the ids and font settings of the generator and without what does not show,
 * pieces of a curve joined, and roles instead of the stand-in colours.
 */
final class PaintedSvg {

    private static final Set<String> DROPPED = Set.of("clip-path", "x1", "x2", "y1", "y2");

    private final Iterator<String> curves;

    private PaintedSvg(Iterator<String> curves) {
        this.curves = curves;
    }

    /**
     * Writes what shows below a node.
     *
     * @param node   what was painted
     * @param curves points of each curve, of which the document holds the first piece: a dash that begins anew with each
     *               piece is none
     * @param svg    where
     */
    static void write(Node node, List<String> curves, StringBuilder svg) {
        new PaintedSvg(curves.iterator()).write(node, false, svg);
    }

    private void write(Node node, boolean unseenStroke, StringBuilder svg) {
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (!(child instanceof Element element)) {
                continue;
            }
            String opacity = element.getAttribute("stroke-opacity");
            boolean unseen = opacity.isEmpty() ? unseenStroke : opacity.equals("0");
            String name = element.getTagName();
            if (name.equals("g")) {
                StringBuilder inner = new StringBuilder();
                write(element, unseen, inner);
                if (inner.length() > 0) {
                    svg.append("<g")
                            .append(attributes(element))
                            .append('>')
                            .append(inner)
                            .append("</g>");
                }
            } else if (name.equals("line")) {
                String curve = curves.next();
                if (!unseen) {
                    svg.append("<path d=\"")
                            .append(curve)
                            .append('"')
                            .append(attributes(element))
                            .append("/>");
                }
            } else if (!name.equals("defs") && !name.equals("rect") || drawn(element)) {
                svg.append('<').append(name).append(attributes(element)).append("/>");
            }
        }
    }

    /** The two rectangles that XChart paints for its own ground have no ink of ours; a square marker has. */
    private static boolean drawn(Element element) {
        return element.getTagName().equals("rect")
                && element.getParentNode() instanceof Element parent
                && Ink.of(parent.getAttribute("fill")) != null;
    }

    private static String attributes(Element element) {
        TreeMap<String, String> kept = new TreeMap<>();
        StringBuilder classes = new StringBuilder();
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            String name = element.getAttributes().item(i).getNodeName();
            String value = element.getAttributes().item(i).getNodeValue();
            Ink ink = Ink.of(value);
            if (ink != null) {
                kept.put(name, ink.light());
                classes.append(classes.length() == 0 ? "" : " ")
                        .append(name.equals("fill") ? "f-" : "s-")
                        .append(ink.key());
            } else if (!name.startsWith("font-") && !name.startsWith("text-") && !DROPPED.contains(name)) {
                kept.put(name, value);
            }
        }
        if (classes.length() > 0) {
            kept.put("class", classes.toString());
        }
        StringBuilder text = new StringBuilder();
        kept.forEach((name, value) -> text.append(' ')
                .append(name)
                .append("=\"")
                .append(Svg.escape(value))
                .append('"'));
        return text.toString();
    }
}
