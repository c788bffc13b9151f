package io.burnlaw.report.document;

import java.util.List;

/**
 * Predictions for equal hollow segments of any size that burn at core and both ends, in a usual chamber;
 * docs/formats.md says how to read the table.
 *
 * @param level of the predictions [1]
 * @param agreesWithin how far its figures may be from the plan of such a grain [1]
 * @param endsWithin the same of the ends of its predictions [1]
 * @param shortestBurn shortest burn for which it is valid, s
 * @param smallestOuter diameter, mm
 * @param largestOuter diameter, mm
 * @param core over outer diameter, nodes [1]
 * @param length of a segment over outer less core diameter, nodes [1]
 * @param surfaceOverThroat greatest, nodes [1]
 * @param start ten thousandths of ln K of the pressure behind the ignition over the greatest surface over throat; core first,
 *     then length, then surface over throat
 * @param mean the same of the mean pressure, over the new surface over throat
 * @param max the same of the highest pressure without the ignition, over the greatest surface over throat
 * @param burnTime ten thousandths of ln of burn time times rate at the mean pressure over web
 * @param pressure MPa absolute, rising
 * @param holding K, surface over throat that keeps each pressure, by the middle of the prediction [1]
 * @param holdingLow by its lower end
 * @param holdingHigh by its upper end
 * @param rate at each pressure, mm/s
 * @param ignition how far the peak is above the start: pressure times throat area, middle, lower and upper end, N
 */
public record GrainTable(
        double level,
        double agreesWithin,
        double endsWithin,
        double shortestBurn,
        double smallestOuter,
        double largestOuter,
        List<Double> core,
        List<Double> length,
        List<Double> surfaceOverThroat,
        List<Integer> start,
        List<Integer> mean,
        List<Integer> max,
        List<Integer> burnTime,
        List<Double> pressure,
        List<Double> holding,
        List<Double> holdingLow,
        List<Double> holdingHigh,
        List<Double> rate,
        List<Double> ignition) {

    public GrainTable {
        core = List.copyOf(core);
        length = List.copyOf(length);
        surfaceOverThroat = List.copyOf(surfaceOverThroat);
        start = List.copyOf(start);
        mean = List.copyOf(mean);
        max = List.copyOf(max);
        burnTime = List.copyOf(burnTime);
        pressure = List.copyOf(pressure);
        holding = List.copyOf(holding);
        holdingLow = List.copyOf(holdingLow);
        holdingHigh = List.copyOf(holdingHigh);
        rate = List.copyOf(rate);
        ignition = List.copyOf(ignition);
        int shapes = core.size() * length.size() * surfaceOverThroat.size();
        for (List<Integer> each : List.of(start, mean, max, burnTime)) {
            if (each.size() != shapes) {
                throw new IllegalArgumentException("a table of grains has " + each.size() + " numbers for " + shapes
                        + " nodes of core, length and surface");
            }
        }
        for (List<Double> each : List.of(holding, holdingLow, holdingHigh, rate)) {
            if (each.size() != pressure.size() || each.size() < 2) {
                throw new IllegalArgumentException(
                        "the columns of a table of grains differ in length, or have no two rows");
            }
        }
        if (ignition.size() != 3) {
            throw new IllegalArgumentException("an ignition has a middle, a lower and an upper end");
        }
    }
}
