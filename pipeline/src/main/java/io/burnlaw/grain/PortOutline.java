package io.burnlaw.grain;

import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import java.util.ArrayList;
import java.util.List;

/**
 * The cross-section of a port, such as a star, in a round grain; it burns outward in parallel layers. The layer after a
 * web x is the contour of the distance from the port at x: its length inside the grain is found by marching squares on
 * an even grid. For a convex port of perimeter P it is P + 2 pi x (Steiner) until it meets the outside.
 *
 * @param x           corners in order round the port, the grain's axis at 0 [m]
 * @param y           the same [m]
 * @param outerRadius of the grain [m]
 */
public record PortOutline(List<Double> x, List<Double> y, double outerRadius) {

    /** Cells of the grid across the grain; the contour's length is then good to a thousandth. */
    private static final int CELLS = 600;

    public PortOutline {
        x = List.copyOf(x);
        y = List.copyOf(y);
        if (x.size() < 3 || x.size() != y.size()) {
            throw new IllegalArgumentException("an outline has three corners or more, not " + x.size());
        }
        for (int i = 0; i < x.size(); i++) {
            if (!(Math.hypot(x.get(i), y.get(i)) < outerRadius)) {
                throw new IllegalArgumentException("corner " + (i + 1) + " of the outline is not inside the grain");
            }
        }
    }

    /** {@return cross-section of the propellant around the port [m2]} */
    public double propellantSection() {
        double twice = 0;
        for (int i = 0; i < x.size(); i++) {
            int next = (i + 1) % x.size();
            twice += x.get(i) * y.get(next) - x.get(next) * y.get(i);
        }
        return Math.PI * outerRadius * outerRadius - Math.abs(twice) / 2;
    }

    /**
     * The surface by web burned.
     *
     * @param length      of the grain [m]
     * @param burningEnds 0, 1 or 2
     * @param rows        of the table, at least 2
     * @return rows from web 0 to burnout
     */
    public List<SurfacePoint> burn(double length, int burningEnds, int rows) {
        double[][] distance = distances();
        double web = farthest();
        double[] contour = contours(distance, web, rows);
        List<SurfacePoint> points = new ArrayList<>();
        double section = propellantSection();
        for (int i = 0; i <= rows; i++) {
            double burned = web * i / rows;
            if (i > 0) {
                section = Math.max(0, section - (contour[i] + contour[i - 1]) / 2 * web / rows);
            }
            double lengthLeft = length - burningEnds * burned;
            if (lengthLeft <= 0) {
                break;
            }
            points.add(new SurfacePoint(burned, contour[i] * lengthLeft + burningEnds * (i == rows ? 0 : section)));
        }
        return points;
    }

    private double[][] distances() {
        double[][] distance = new double[CELLS + 1][CELLS + 1];
        for (int i = 0; i <= CELLS; i++) {
            for (int j = 0; j <= CELLS; j++) {
                distance[i][j] = signedDistance(at(i), at(j));
            }
        }
        return distance;
    }

    private double at(int node) {
        return outerRadius * (2.0 * node / CELLS - 1);
    }

    /** Distance from the port's edge, negative inside the port. */
    private double signedDistance(double px, double py) {
        double nearest = Double.POSITIVE_INFINITY;
        boolean inside = false;
        for (int i = 0; i < x.size(); i++) {
            int next = (i + 1) % x.size();
            double ax = x.get(i);
            double ay = y.get(i);
            double dx = x.get(next) - ax;
            double dy = y.get(next) - ay;
            double square = dx * dx + dy * dy;
            double share = square == 0 ? 0 : ((px - ax) * dx + (py - ay) * dy) / square;
            double clamped = Math.max(0, Math.min(1, share));
            double offX = px - ax - clamped * dx;
            double offY = py - ay - clamped * dy;
            nearest = Math.min(nearest, offX * offX + offY * offY);
            // the corner itself, not ay + dy: that may round to the other side of a grid line
            if (ay > py != y.get(next) > py && px < ax + (py - ay) / dy * dx) {
                inside = !inside;
            }
        }
        return inside ? -Math.sqrt(nearest) : Math.sqrt(nearest);
    }

    /** The last of the propellant is at the outside, where it is farthest from the port. */
    private double farthest() {
        double farthest = 0;
        int steps = 7200;
        for (int i = 0; i < steps; i++) {
            double angle = 2 * Math.PI * i / steps;
            farthest = Math.max(
                    farthest, signedDistance(outerRadius * StrictMath.cos(angle), outerRadius * StrictMath.sin(angle)));
        }
        return farthest;
    }

    private double[] contours(double[][] distance, double web, int rows) {
        double[] length = new double[rows + 1];
        for (int i = 0; i < x.size(); i++) {
            int next = (i + 1) % x.size();
            length[0] += Math.hypot(x.get(next) - x.get(i), y.get(next) - y.get(i));
        }
        for (int i = 0; i < CELLS; i++) {
            for (int j = 0; j < CELLS; j++) {
                double[] corner = {distance[i][j], distance[i + 1][j], distance[i + 1][j + 1], distance[i][j + 1]};
                double low = Math.min(Math.min(corner[0], corner[1]), Math.min(corner[2], corner[3]));
                double high = Math.max(Math.max(corner[0], corner[1]), Math.max(corner[2], corner[3]));
                int from = Math.max(1, (int) Math.ceil(low / web * rows));
                for (int k = from; k < rows && web * k / rows < high; k++) {
                    length[k] += inCell(i, j, corner, web * k / rows);
                }
            }
        }
        return length;
    }

    /** Where the contour crosses the sides of a cell, joined in pairs; a saddle's two pieces are taken as they come. */
    private double inCell(int i, int j, double[] corner, double level) {
        int[] di = {0, 1, 1, 0};
        int[] dj = {0, 0, 1, 1};
        double[] crossing = new double[8];
        int count = 0;
        for (int side = 0; side < 4; side++) {
            int end = (side + 1) % 4;
            if (corner[side] < level != corner[end] < level) {
                double share = (level - corner[side]) / (corner[end] - corner[side]);
                crossing[count++] = at(i + di[side]) + share * (at(i + di[end]) - at(i + di[side]));
                crossing[count++] = at(j + dj[side]) + share * (at(j + dj[end]) - at(j + dj[side]));
            }
        }
        double sum = 0;
        for (int k = 0; k + 3 < count; k += 4) {
            sum += insideGrain(crossing[k], crossing[k + 1], crossing[k + 2], crossing[k + 3]);
        }
        return sum;
    }

    /** Length of the part of a short straight piece that lies inside the outer circle. */
    private double insideGrain(double ax, double ay, double bx, double by) {
        double length = Math.hypot(bx - ax, by - ay);
        double atA = Math.hypot(ax, ay) - outerRadius;
        double atB = Math.hypot(bx, by) - outerRadius;
        if (atA <= 0 && atB <= 0) {
            return length;
        }
        if (atA > 0 && atB > 0) {
            return 0;
        }
        return length * Math.min(atA, atB) / (Math.min(atA, atB) - Math.max(atA, atB));
    }
}
