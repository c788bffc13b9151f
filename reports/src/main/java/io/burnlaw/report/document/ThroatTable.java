package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;

/**
 * What each throat of a range would do, as columns of one length. Between two rows the figures follow by linear
 * interpolation of their logarithms over the logarithm of the throat, to 0.1 %; no other throat may be taken from it.
 *
 * @param level of the predictions [1]
 * @param throat diameters, rising, mm
 * @param surfaceOverThroat greatest burning surface over the area of the throat [1]
 * @param mean pressure over the burn time, MPa absolute
 * @param meanLow lower prediction of it
 * @param meanHigh upper prediction of it
 * @param max highest pressure, MPa absolute
 * @param maxLow lower prediction of it
 * @param maxHigh upper prediction of it
 * @param burnTime s
 * @param remarks on parts of the range
 * @param smaller why there is no smaller throat
 * @param larger why there is no larger one
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record ThroatTable(
        double level,
        List<Double> throat,
        List<Double> surfaceOverThroat,
        List<Double> mean,
        List<Double> meanLow,
        List<Double> meanHigh,
        List<Double> max,
        List<Double> maxLow,
        List<Double> maxHigh,
        List<Double> burnTime,
        List<ThroatRemark> remarks,
        String smaller,
        String larger) {

    public ThroatTable {
        remarks = List.copyOf(remarks);
        for (List<Double> column :
                List.of(throat, surfaceOverThroat, mean, meanLow, meanHigh, max, maxLow, maxHigh, burnTime)) {
            if (column.size() != throat.size() || throat.size() < 2) {
                throw new IllegalArgumentException(
                        "the columns of a table of throats differ in length, or have no two rows");
            }
        }
        throat = List.copyOf(throat);
        surfaceOverThroat = List.copyOf(surfaceOverThroat);
        mean = List.copyOf(mean);
        meanLow = List.copyOf(meanLow);
        meanHigh = List.copyOf(meanHigh);
        max = List.copyOf(max);
        maxLow = List.copyOf(maxLow);
        maxHigh = List.copyOf(maxHigh);
        burnTime = List.copyOf(burnTime);
    }
}
