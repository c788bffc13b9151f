package io.burnlaw.ballistics;

import io.burnlaw.ballistics.SimulatedFiring.FiringRecord;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * A whole firing from a rate law: the lumped chamber.
 *
 * <pre>
 *     dx/dt = lit(t) · r(p)                                                        web burned [m]
 *     V     = V0 + grain(0) - grain(x)                                             free volume [m3]
 *     dp/dt = (Gamma c*)^2 / V · ( lit · S(x) · r(p) · (rho - p / (Gamma c*)^2)
 *                                  + igniter(t) - m(p) )                           pressure [Pa, absolute]
 * </pre>
 * with m(p) the nozzle's mass flow, choked or not, and a throat that changes with the share of web burned. After the
 * last of the web the chamber blows down at constant temperature until 0.2 % of the highest gauge pressure is left.
 *
 * <p><b>Valid</b> for motors short enough that one pressure describes the chamber: no erosive burning, no pressure drop
 * along the port. <b>Source.</b> Continuity of mass; Sutton and Biblarz (2001), chapter 11; docs/methods.md, section
 * Chamber model.
 */
public final class ForwardSimulation {

    private static final double END_OF_TAIL_OFF = 2e-3;

    private ForwardSimulation() {}

    /**
     * Fires a motor.
     *
     * @param rate rate [m/s] by absolute pressure [Pa]; may jump, must not be negative
     * @return the firing; it says itself whether it burned out within the time limit
     */
    public static SimulatedFiring run(Motor motor, DoubleUnaryOperator rate, SimulationSettings settings) {
        return new Chamber(motor, rate, settings).fire();
    }

    /**
     * Fires a motor with its usual igniter, in the integrator's own steps.
     *
     * @param rate rate [m/s] by absolute pressure [Pa]
     */
    public static SimulatedFiring run(Motor motor, DoubleUnaryOperator rate) {
        return run(motor, rate, SimulationSettings.of(Ignition.usual(motor)));
    }

    /** The integration of one firing; lives for one call. */
    private static final class Chamber implements DormandPrince.Derivative {

        private static final int PRESSURE = 0;
        private static final int WEB = 1;
        private static final int EXPELLED = 2;

        /** Shortest step in filling times: across a jump of the law the error estimate never gets small. */
        private static final double SHORTEST = 0.02;

        /** What is left of a web when it counts as reached, as a share of the whole. */
        private static final double REACHED = 1e-10;

        private final Motor motor;
        private Grain grain;
        private final DoubleUnaryOperator rate;
        private final SimulationSettings settings;
        private final double fullVolume;
        private double burnout;
        private double[] breaks;
        private boolean waiting;
        private final DormandPrince solver = new DormandPrince(this, 3);
        private final double[] state;
        private final FiringRecord record;
        private int nextBreak;
        private double time;
        private double maximum;
        private double firstBurnout = Double.POSITIVE_INFINITY;
        private double meanBurnout = Double.POSITIVE_INFINITY;
        private double lastBurnout = Double.POSITIVE_INFINITY;

        Chamber(Motor motor, DoubleUnaryOperator rate, SimulationSettings settings) {
            this.motor = motor;
            this.waiting = settings.ignition().ahead() && settings.ignition().dwellTime() > 0;
            this.grain = waiting
                    ? new PartAhead(motor.grain(), settings.ignition().dwellShare(), Double.POSITIVE_INFINITY)
                    : motor.grain();
            this.rate = rate;
            this.settings = settings;
            this.fullVolume = motor.freeVolume() + grain.volume(0);
            this.burnout = grain.burnout();
            this.breaks = grain.breaks();
            this.state = new double[] {Math.max(motor.ambientPressure(), 1), 0, 0};
            this.maximum = state[PRESSURE];
            this.record = new FiringRecord(motor, settings);
        }

        @Override
        public void at(double now, double[] at, double[] slope) {
            double pressure = Math.max(at[PRESSURE], 1);
            double web = at[WEB];
            double made = settings.ignition().igniterFlow(now);
            double volume = fullVolume;
            slope[WEB] = 0;
            if (nextBreak < breaks.length) {
                // held below the next break, so that no stage of a step looks across it
                double within = Math.min(web, breaks[nextBreak] - REACHED * burnout);
                double speed = settings.ignition().lit(now)
                        * rate.applyAsDouble(pressure)
                        * settings.disturbance().rateFactor().applyAsDouble(now, within);
                slope[WEB] = speed;
                made += grain.surface(within)
                        * speed
                        * (motor.density() - motor.gas().density(pressure));
                volume -= grain.volume(within);
            }
            double area =
                    throatArea(web) * settings.disturbance().throatFactor().applyAsDouble(now);
            double flow = Nozzle.massFlow(pressure, motor.ambientPressure(), area, motor.gas());
            slope[PRESSURE] = motor.gas().specificEnergy() / volume * (made - flow);
            slope[EXPELLED] = flow;
        }

        SimulatedFiring fire() {
            double step = fillingTime() * SHORTEST;
            solver.begin(time, state);
            record.start(state[PRESSURE]);
            while (time < settings.timeLimit() && !ended()) {
                double shortest = SHORTEST * fillingTime();
                step = Math.min(Math.max(step, shortest), settings.timeLimit() - time + shortest);
                step = Math.min(step, toNextBreak());
                if (waiting) {
                    step = Math.min(step, Math.max(settings.ignition().dwellTime() - time, 1e-9));
                }
                solver.step(time, state, step);
                double error = errorNorm();
                if (error > 1 && step > shortest) {
                    step *= Math.max(0.2, 0.9 * StrictMath.pow(error, -0.2));
                    continue;
                }
                advance(step);
                step *= Math.min(5, Math.max(0.2, 0.9 * StrictMath.pow(Math.max(error, 1e-10), -0.2)));
            }
            return record.finish(outcome(), firstBurnout, meanBurnout, lastBurnout, maximum, state[EXPELLED]);
        }

        private void advance(double step) {
            double mean = grain.web().value();
            // an even web ends at its last break, which a step only comes near to
            if (state[WEB] < mean && solver.next[WEB] >= mean - 3 * REACHED * burnout) {
                double speed = (solver.next[WEB] - state[WEB]) / step;
                meanBurnout = time + (mean - state[WEB]) / speed;
            }
            record.take(solver, state, time, step);
            System.arraycopy(solver.next, 0, state, 0, state.length);
            time += step;
            maximum = Math.max(maximum, state[PRESSURE]);
            solver.accept();
            if (waiting && time >= settings.ignition().dwellTime()) {
                theRestTakesFire();
            }
            if (nextBreak < breaks.length && breaks[nextBreak] - state[WEB] <= 2 * REACHED * burnout) {
                state[WEB] = breaks[nextBreak] + REACHED * burnout;
                if (Double.isInfinite(meanBurnout) && state[WEB] >= mean) {
                    // an even web: its mean is the break itself, and no step looks across a break
                    meanBurnout = time;
                }
                if (nextBreak == 0) {
                    firstBurnout = time;
                }
                nextBreak++;
                if (nextBreak == breaks.length) {
                    lastBurnout = time;
                }
                solver.begin(time, state);
            }
        }

        private void theRestTakesFire() {
            waiting = false;
            grain = new PartAhead(motor.grain(), settings.ignition().dwellShare(), state[WEB]);
            burnout = grain.burnout();
            breaks = grain.breaks();
            nextBreak = 0;
            while (nextBreak < breaks.length && breaks[nextBreak] <= state[WEB]) {
                nextBreak++;
            }
            solver.begin(time, state);
        }

        private boolean ended() {
            double over = state[PRESSURE] - motor.ambientPressure();
            boolean quiet = over <= END_OF_TAIL_OFF * (maximum - motor.ambientPressure());
            return quiet && !waiting && (nextBreak == breaks.length || isOut());
        }

        /** Whether nothing burns any more although there is web left, and nothing will light it. */
        private boolean isOut() {
            Ignition ignition = settings.ignition();
            double lightingUp = Math.max(ignition.igniterDuration(), ignition.dwellTime() + ignition.spreadTime());
            return time > lightingUp && solver.slope(WEB) == 0;
        }

        private SimulatedFiring.Outcome outcome() {
            if (nextBreak == breaks.length) {
                return SimulatedFiring.Outcome.BURNED_OUT;
            }
            return ended() ? SimulatedFiring.Outcome.WENT_OUT : SimulatedFiring.Outcome.STILL_BURNING;
        }

        private double toNextBreak() {
            double speed = solver.slope(WEB);
            if (nextBreak == breaks.length || speed <= 0) {
                return Double.POSITIVE_INFINITY;
            }
            // aims a little short of it: the rate may rise within the step
            double left = breaks[nextBreak] - state[WEB];
            return Math.max(left - REACHED * burnout, REACHED * burnout) / speed;
        }

        private double throatArea(double web) {
            return motor.nozzle().throatArea(Math.min(1, web / burnout));
        }

        private double fillingTime() {
            double volume = fullVolume - grain.volume(state[WEB]);
            double factor = motor.gas().flowFactor();
            return volume / (throatArea(state[WEB]) * motor.gas().characteristicVelocity() * factor * factor);
        }

        private double errorNorm() {
            double scale = settings.tolerance() * Math.max(state[PRESSURE], solver.next[PRESSURE]);
            double ofPressure = solver.error[PRESSURE] / scale;
            double ofWeb = solver.error[WEB] / (settings.tolerance() * burnout);
            double norm = Math.max(Math.abs(ofPressure), Math.abs(ofWeb));
            return Double.isNaN(norm) ? 1e6 : norm;
        }
    }

    /**
     * A grain of which a part of the surface took fire before the rest: the part has burned deeper everywhere, so that the
     * web is uneven and burns through in two steps. Webs burned are those of the part.
     *
     * @param whole the grain as cast
     * @param share of the surface that took fire first [1]
     * @param ahead web that it had burned when the rest took fire [m]; infinite while the rest has not
     */
    private record PartAhead(Grain whole, double share, double ahead) implements Grain {

        @Override
        public double surface(double burned) {
            return share * whole.surface(burned) + (burned < ahead ? 0 : (1 - share) * whole.surface(burned - ahead));
        }

        @Override
        public Measured web() {
            return Measured.of(whole.web().value() + (Double.isInfinite(ahead) ? 0 : (1 - share) * ahead));
        }

        @Override
        public double volume(double burned) {
            return share * whole.volume(burned) + (1 - share) * whole.volume(Math.max(0, burned - ahead));
        }

        @Override
        public double burnout() {
            return whole.burnout() + (Double.isInfinite(ahead) ? 0 : ahead);
        }

        @Override
        public double[] breaks() {
            double[] first = whole.breaks();
            return Double.isInfinite(ahead)
                    ? first
                    : DoubleStream.concat(
                                    Arrays.stream(first), Arrays.stream(first).map(each -> each + ahead))
                            .sorted()
                            .distinct()
                            .toArray();
        }
    }
}
