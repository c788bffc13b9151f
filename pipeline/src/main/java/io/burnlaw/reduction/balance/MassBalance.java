package io.burnlaw.reduction.balance;

import io.burnlaw.reduction.events.UniformTrace;

/**
 * Web burned along a firing, from the gas that left through the nozzle and the gas stored in the chamber.
 *
 * <pre>
 *     J(t)   = integral from A to t of phi P At dt                                            [N s]
 *     kappa  = 1/(Gamma c*)^2                                  gas density over pressure      [s2/m2]
 *     vb(t)  = ( J/c* + kappa (P - PA) V0 - mi ) / ( rho - kappa P )   propellant gone        [m3]
 *     x(t)   = web at which the grain has lost vb(t)                                          [m]
 *     c*     : vb(G) is the whole grain                                                       [m/s]
 * </pre>
 *
 * <p>mi is the gas of the igniter, as far as it has come: the first gas is taken to be the igniter's until all of it is
 * there. Its own time does not matter, since rates are taken after the ignition transient; that it closed the integral as
 * if it were propellant does, one for one.
 *
 * <p>V0 is the free volume at the begin; that it grows by vb is what puts kappa P into the denominator, so the gas
 * density term is exact. Because c* is closed on the same trace, the sensor's gain, the throat's size and the mass
 * cancel from x(t): only the shape of the trace, the geometry and the small storage term are left.
 *
 * <p><b>Valid</b> while the geometry is: up to the first burn-through of an uneven web; after it x(t) is the mean over
 * what burned. Gas at the flame's temperature throughout (isothermal); heat loss is in c*.
 *
 * <p><b>Source.</b> Conservation of mass, lumped chamber: Fry, CPTR 75 (2002), mass balance rate; DeLuca et al.,
 * RTO-MP-091 paper 35. Time from fractions of the pressure integral: Friedlander and Jordan, AIAA-84-1439 (1984).
 */
public final class MassBalance {

    private final BurnInputs inputs;
    private final double[] burnedVolume;
    private final double[] web;
    private final double integral;
    private final double characteristicVelocity;

    private MassBalance(
            BurnInputs inputs, double[] burnedVolume, double[] web, double integral, double characteristicVelocity) {
        this.inputs = inputs;
        this.burnedVolume = burnedVolume;
        this.web = web;
        this.integral = integral;
        this.characteristicVelocity = characteristicVelocity;
    }

    /**
     * Closes the balance over the whole record.
     *
     * @param inputs record from begin to end of operation, and what else is needed
     */
    public static MassBalance of(BurnInputs inputs) {
        UniformTrace record = inputs.record();
        int n = record.size();
        ChokedFlowFraction flow = inputs.flow();
        double[] expelled = new double[n];
        double throatStep = (inputs.throatAfter() - inputs.throatBefore()) / n;
        double sum = 0;
        double drivenBefore = 0;
        for (int i = 0; i < n; i++) {
            double throat = inputs.throatBefore() + (i + 0.5) * throatStep;
            double driven = flow.drivingPressure(record.pressure(i)) * throat;
            // Values belong to the middles of the cells, so that the web does too.
            sum += (i == 0 ? 0.5 * driven : 0.5 * (driven + drivenBefore)) * record.step();
            drivenBefore = driven;
            expelled[i] = sum;
        }
        double gamma = flow.gamma();
        double mass = inputs.mass() + inputs.igniterGas();
        double free = inputs.chamberVolume() - inputs.grain().volume();
        double first = mean(record, 0, Math.min(n, 3));
        double last = mean(record, Math.max(0, n - 3), n);
        double velocity = sum / mass;
        for (int pass = 0; pass < 4; pass++) {
            double kappa = 1 / square(gamma * velocity);
            velocity = sum / (mass - kappa * (last * inputs.chamberVolume() - first * free));
        }
        double kappa = 1 / square(gamma * velocity);
        double[] gone = new double[n];
        double[] web = new double[n];
        for (int i = 0; i < n; i++) {
            double p = record.pressure(i);
            double made = expelled[i] / velocity + kappa * (p - first) * free;
            double ofIgniter = Math.min(inputs.igniterGas(), Math.max(0, made));
            gone[i] = (made - ofIgniter) / (inputs.density() - kappa * p);
            web[i] = inputs.grain().webBurned(gone[i], i == 0 ? 0 : web[i - 1]);
        }
        return new MassBalance(inputs, gone, web, sum, velocity);
    }

    private static double mean(UniformTrace record, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += record.pressure(i);
        }
        return sum / (to - from);
    }

    private static double square(double x) {
        return x * x;
    }

    /** {@return what it was made of} */
    public BurnInputs inputs() {
        return inputs;
    }

    /** {@return c* that closes the balance on density times volume [m/s]} */
    public double characteristicVelocity() {
        return characteristicVelocity;
    }

    /** {@return pressure integral times throat area over the operation [N s]} */
    double integral() {
        return integral;
    }

    /**
     * Web burned by a time.
     *
     * @param time [s]
     * @return [m]
     */
    public double webAt(double time) {
        return interpolate(web, time);
    }

    private double interpolate(double[] values, double time) {
        double place = Math.max(0, Math.min(values.length - 1.0, inputs.record().place(time)));
        int cell = Math.min((int) place, values.length - 2);
        return values[cell] + (place - cell) * (values[cell + 1] - values[cell]);
    }

    /**
     * Volume of propellant gone by the middle of a cell.
     *
     * @param cell from 0
     * @return [m3]
     */
    double volume(int cell) {
        return burnedVolume[cell];
    }

    /** {@return web burned at the middle of each cell [m]} */
    double[] webs() {
        return web.clone();
    }

    /**
     * When a web had burned.
     *
     * @param depth web burned [m]
     * @return first time at which it had, and did not come back below it afterwards [s]
     */
    double timeOf(double depth) {
        int i = web.length - 1;
        while (i > 0 && web[i - 1] >= depth) {
            i--;
        }
        if (i == 0) {
            return inputs.record().time(0);
        }
        double span = web[i] - web[i - 1];
        double share = span > 0 ? (depth - web[i - 1]) / span : 1;
        return inputs.record().time(i - 1)
                + Math.min(1, share) * inputs.record().step();
    }
}
