package io.burnlaw.report.chart;

import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * What XChart painted, as SVG text: without the ids and font settings of the generator and without what does not show,
 * pieces of a curve joined, and roles instead of the stand-in colours.
 */
final class PaintedSvg {

    private static final Set<String> DROPPED = Set.of("clip-path", "x1", "x2", "y1", "y2");

    private PaintedSvg() {}

    /** Writes what shows below a node. */
    static void write(Node node, StringBuilder svg) {
        write(node, false, svg);
    }

    private static void write(Node node, boolean unseenStroke, StringBuilder svg) {
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
                child = unseen ? child : joined(element, svg);
            } else if (!name.equals("defs") && !name.equals("rect") || drawn(element)) {
                svg.append('<').append(name).append(attributes(element)).append("/>");
            }
        }
    }

    /**
     * Writes a run of lines that go on where the one before ended as one path: XChart strokes a curve piece by piece,
     * and a dash that begins anew with each piece is none.
     *
     * @return the last of the run
     */
    private static Node joined(Element first, StringBuilder svg) {
        StringBuilder path = new StringBuilder("M" + end(first, 1));
        Element last = first;
        path.append('L').append(end(first, 2));
        Element next = nextLine(last);
        while (next != null && end(next, 1).equals(end(last, 2))) {
            path.append('L').append(end(next, 2));
            last = next;
            next = nextLine(last);
        }
        svg.append("<path d=\"")
                .append(path)
                .append('"')
                .append(attributes(first))
                .append("/>");
        return last;
    }

    private static @Nullable Element nextLine(Element line) {
        Node next = line.getNextSibling();
        while (next != null && !(next instanceof Element)) {
            next = next.getNextSibling();
        }
        return next instanceof Element element && element.getTagName().equals("line") ? element : null;
    }

    private static String end(Element line, int number) {
        return line.getAttribute("x" + number) + " " + line.getAttribute("y" + number);
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
