package io.burnlaw.reduction;

import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.ballistics.ThrustCoefficient;
import io.burnlaw.trace.Trace;
import java.util.Arrays;

/**
 * Thrust to pressure for one nozzle, by a table of the rising relation between them.
 *
 * <p>The throat's area changes with the share of the impulse that is over.
 */
final class ThrustInversion {

    private static final int NODES = 600;
    private static final double HIGHEST = 1e9;

    private final Trace trace;
    private final double ambient;
    private final double impulse;
    private final double[] area;
    private final double[] tablePressure = new double[NODES];
    private final double[] tableThrustPerArea = new double[NODES];

    ThrustInversion(Trace trace, Nozzle nozzle, ThrustCoefficient coefficient, double ambient) {
        this.trace = trace;
        this.ambient = ambient;
        int n = trace.size();
        double[] sum = new double[n];
        for (int i = 1; i < n; i++) {
            sum[i] = sum[i - 1] + 0.5 * (trace.thrust(i) + trace.thrust(i - 1)) * (trace.time(i) - trace.time(i - 1));
        }
        this.impulse = n == 0 ? 0 : sum[n - 1];
        this.area = new double[n];
        for (int i = 0; i < n; i++) {
            double share = impulse > 0 ? Math.max(0, Math.min(1, sum[i] / impulse)) : 0;
            area[i] = nozzle.throatArea(share);
        }
        for (int k = 0; k < NODES; k++) {
            // Even in the logarithm of the gauge pressure: fine near rest, where the unchoked flow lives.
            double gauge = 1e-3 * ambient * StrictMath.pow(HIGHEST / (1e-3 * ambient), k / (NODES - 1.0));
            tablePressure[k] = ambient + gauge;
            double thrust = coefficient.at(tablePressure[k], ambient) * tablePressure[k];
            tableThrustPerArea[k] = k == 0 ? thrust : Math.max(thrust, tableThrustPerArea[k - 1] * (1 + 1e-12));
        }
    }

    double impulse() {
        return impulse;
    }

    double pressure(int i, double efficiency) {
        double wanted = trace.thrust(i) / (efficiency * area[i]);
        // A stand swings about its rest: what pulls is mirrored, so that swings out and back sum to nothing.
        return wanted < 0 ? 2 * ambient - outward(-wanted) : outward(wanted);
    }

    private double outward(double wanted) {
        if (wanted <= tableThrustPerArea[0]) {
            // A straight line through rest, so that noise about zero thrust stays noise about ambient.
            return ambient + wanted * (tablePressure[0] - ambient) / tableThrustPerArea[0];
        }
        int at = Arrays.binarySearch(tableThrustPerArea, wanted);
        int high = Math.min(NODES - 1, at >= 0 ? at : -at - 1);
        int low = Math.max(0, high - 1);
        double span = tableThrustPerArea[high] - tableThrustPerArea[low];
        double share = span > 0 ? (wanted - tableThrustPerArea[low]) / span : 0;
        return tablePressure[low] + share * (tablePressure[high] - tablePressure[low]);
    }

    double[] pressures(double efficiency) {
        double[] pressure = new double[trace.size()];
        for (int i = 0; i < pressure.length; i++) {
            pressure[i] = pressure(i, efficiency);
        }
        return pressure;
    }

    /** Efficiency at which the integral of P·A_t over all samples with thrust is the wanted one [N s]. */
    double efficiency(double wanted) {
        double low = 0.05;
        double high = 20;
        for (int pass = 0; pass < 60; pass++) {
            double middle = Math.sqrt(low * high);
            if (expelled(middle) > wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.sqrt(low * high);
    }

    /** Integral of P·A_t over the operation [N s]: from one per cent of the impulse's sum to 99 per cent, scaled. */
    private double expelled(double efficiency) {
        double sum = 0;
        double gathered = 0;
        double last = 0;
        double inside = 0;
        for (int i = 1; i < trace.size(); i++) {
            double step = trace.time(i) - trace.time(i - 1);
            last = 0.5 * (trace.thrust(i) + trace.thrust(i - 1)) * step;
            gathered += last;
            if (gathered > 0.01 * impulse && gathered < 0.99 * impulse) {
                sum += 0.5 * (pressure(i, efficiency) * area[i] + pressure(i - 1, efficiency) * area[i - 1]) * step;
                inside += last;
            }
        }
        return inside > 0 ? sum * impulse / inside : 0;
    }

    /** The pressure of the highest thrust [Pa, absolute]. */
    double highest(double efficiency) {
        int at = 0;
        for (int i = 0; i < trace.size(); i++) {
            at = trace.thrust(i) > trace.thrust(at) ? i : at;
        }
        return trace.size() == 0 ? ambient : pressure(at, efficiency);
    }

    /** Mean slope of pressure over thrust while the motor works [Pa/N]. */
    double pressurePerThrust(double efficiency) {
        double highest = 0;
        int at = 0;
        for (int i = 0; i < trace.size(); i++) {
            if (trace.thrust(i) > highest) {
                highest = trace.thrust(i);
                at = i;
            }
        }
        return highest > 0 ? (pressure(at, efficiency) - ambient) / highest : 0;
    }
}
