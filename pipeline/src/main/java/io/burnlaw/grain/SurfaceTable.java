package io.burnlaw.grain;

import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Any shape, by a table of burning surface against web burned; straight lines between the rows, and the integral of
 * these straight lines is the propellant. docs/methods.md, section Grains, says how a table is made for a star or a
 * finocyl.
 *
 * @param points from web 0, webs rising, at least two
 * @param webStd standard uncertainty of the web [m]; empty where nobody stated one
 */
public record SurfaceTable(List<SurfacePoint> points, OptionalDouble webStd) implements Grain {

    public SurfaceTable {
        points = List.copyOf(points);
        if (points.size() < 2 || points.get(0).web() != 0) {
            throw new IllegalArgumentException("a surface table has two rows or more and begins at web 0");
        }
        for (int i = 0; i < points.size(); i++) {
            boolean rises = i == 0 || points.get(i).web() > points.get(i - 1).web();
            if (!(rises && points.get(i).surface() >= 0)) {
                throw new IllegalArgumentException("row " + (i + 1) + " of a surface table: " + points.get(i));
            }
        }
    }

    @Override
    public double surface(double burned) {
        if (burned > burnout()) {
            return 0;
        }
        int above = above(burned);
        SurfacePoint low = points.get(above - 1);
        SurfacePoint high = points.get(above);
        double share = (burned - low.web()) / (high.web() - low.web());
        return low.surface() + share * (high.surface() - low.surface());
    }

    @Override
    public double volume(double burned) {
        if (burned >= burnout()) {
            return 0;
        }
        int above = above(burned);
        double sum = trapezoid(new SurfacePoint(burned, surface(burned)), points.get(above));
        for (int i = above + 1; i < points.size(); i++) {
            sum += trapezoid(points.get(i - 1), points.get(i));
        }
        return sum;
    }

    @Override
    public Measured web() {
        return new Measured(burnout(), webStd);
    }

    @Override
    public double burnout() {
        return points.get(points.size() - 1).web();
    }

    /** The first row whose web is above what is burned, or the last row. */
    private int above(double burned) {
        int low = 0;
        int high = points.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (points.get(middle).web() > burned) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    private static double trapezoid(SurfacePoint low, SurfacePoint high) {
        return (high.web() - low.web()) * (low.surface() + high.surface()) / 2;
    }
}
