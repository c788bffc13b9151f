package io.burnlaw.simulation;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.quantity.Unit;
import io.burnlaw.trace.Trace;

/** A record as a logger's file. */
final class TraceFile {

    /** Last digit of a pressure [Pa] and of a thrust [N]: below the noise of any sensor here. */
    private static final double PRESSURE_STEP = 100;

    private static final double THRUST_STEP = 0.01;

    private final Scenario scenario;

    TraceFile(Scenario scenario) {
        this.scenario = scenario;
    }

    String text(Trace trace) {
        Scenario.Logger logger = scenario.logger();
        String field = logger.semicolons() ? ";" : ",";
        StringBuilder text = new StringBuilder();
        if (logger.preamble()) {
            text.append("# invented record, see truth.yaml\n")
                    .append("# record ")
                    .append(trace.firing())
                    .append(", ")
                    .append(trace.size())
                    .append(" samples\n");
        }
        text.append(heading("time", logger.timeUnit()));
        if (trace.hasPressure()) {
            text.append(field).append(heading("pressure", logger.pressureUnit()));
        }
        if (trace.hasThrust()) {
            text.append(field).append(heading("thrust", logger.thrustUnit()));
        }
        text.append('\n');
        double zero = logger.pressureKind() == PressureKind.GAUGE ? scenario.ambientPressure() : 0;
        int ofTime = timeDecimals(trace, logger.timeUnit());
        int ofPressure = FixedNumber.decimalsFor(logger.pressureUnit(), PRESSURE_STEP);
        int ofThrust = FixedNumber.decimalsFor(logger.thrustUnit(), THRUST_STEP);
        for (int i = 0; i < trace.size(); i++) {
            text.append(number(logger.timeUnit().fromSi(trace.time(i)), ofTime));
            if (trace.hasPressure()) {
                text.append(field).append(number(logger.pressureUnit().fromSi(trace.pressure(i) - zero), ofPressure));
            }
            if (trace.hasThrust()) {
                text.append(field).append(number(logger.thrustUnit().fromSi(trace.thrust(i)), ofThrust));
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static String heading(String name, Unit unit) {
        return name + " [" + unit.symbol() + "]";
    }

    /** A hundredth of the shortest interval, so that uneven stamps survive; whole microseconds at most. */
    private static int timeDecimals(Trace trace, Unit unit) {
        double shortest = Double.POSITIVE_INFINITY;
        boolean even = true;
        for (int i = 1; i < trace.size(); i++) {
            double step = trace.time(i) - trace.time(i - 1);
            shortest = step > 0 ? Math.min(shortest, step) : shortest;
            even &= Math.abs(trace.time(i) / 1e-4 - Math.rint(trace.time(i) / 1e-4)) < 1e-6;
        }
        return FixedNumber.decimalsFor(unit, even ? 1e-4 : Math.max(1e-6, shortest / 100));
    }

    private String number(double value, int decimals) {
        String text = FixedNumber.decimals(value, decimals);
        return scenario.logger().semicolons() ? text.replace('.', ',') : text;
    }
}
