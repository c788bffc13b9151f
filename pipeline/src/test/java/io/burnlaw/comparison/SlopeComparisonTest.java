package io.burnlaw.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;
import static org.assertj.core.data.Percentage.withPercentage;

import io.burnlaw.Oracle;
import io.burnlaw.comparison.DoseTrends.LinearModel;
import io.burnlaw.comparison.TwoLaws.SlopeComparison;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class SlopeComparisonTest {

    private final GroupedTable crickets = GroupedTable.read("ancova_crickets.csv");
    private final SlopeComparison songs = new SlopeComparison(crickets.line("ex"), crickets.line("niv"));

    @Test
    @Oracle(
            value = "Walker (1962) cricket songs, in McDonald, Handbook of Biological Statistics (2014), analysis of "
                    + "covariance: test of equal slopes; digits by R 4.2.2",
            agreement = "all digits listed")
    void equalSlopesOfTheCricketSongs() {
        assertThat(crickets.line("ex").slope()).isCloseTo(3.75144723688, offset(1e-10));
        assertThat(crickets.line("niv").slope()).isCloseTo(3.51746168588, offset(1e-10));
        assertThat(crickets.line("ex").at(0)).isCloseTo(-11.04084811569, offset(1e-9));
        assertThat(crickets.line("niv").at(0)).isCloseTo(-15.38925529754, offset(1e-9));
        assertThat(songs.slopeDifference()).isCloseTo(-0.233985551006, offset(1e-11));
        assertThat(songs.slopeDifferenceStd()).isCloseTo(0.200862191848, offset(1e-11));
        assertThat(songs.parallel().statistic()).isCloseTo(1.35701, offset(5e-6));
        assertThat(songs.parallel().pValue()).isCloseTo(0.25425, offset(5e-6));
        assertThat(songs.parallel().denominatorDegrees()).isEqualTo(27);
        assertThat(songs.variance() * 27).isCloseTo(85.07408972, offset(5e-9));
        assertThat(songs.parallelVariance() * 28).isCloseTo(89.34986854, offset(5e-9));
    }

    @Test
    @Oracle(
            value = "Walker (1962) cricket songs, in McDonald, Handbook of Biological Statistics (2014), analysis of "
                    + "covariance: common slope and shift; digits by R 4.2.2",
            agreement = "all digits listed")
    void commonSlopeAndShiftOfTheCricketSongs() {
        assertThat(songs.commonSlope()).isCloseTo(3.60275287486, offset(5e-12));
        assertThat(songs.commonSlopeStd()).isCloseTo(0.0972880867672, offset(5e-14));
        assertThat(songs.shift()).isCloseTo(-10.06529123455, offset(5e-12));
        assertThat(songs.shiftStd()).isCloseTo(0.7352622370417, offset(5e-13));
        assertThat(Math.sqrt(songs.parallelVariance())).isCloseTo(1.78635571303, offset(5e-12));
        double t = TDistribution.of(28).inverseCumulativeProbability(0.975);
        assertThat(songs.shift() - t * songs.shiftStd()).isCloseTo(-11.571408, offset(5e-7));
        assertThat(songs.shift() + t * songs.shiftStd()).isCloseTo(-8.559175, offset(5e-7));
        double statistic = songs.shift() / songs.shiftStd();
        assertThat(statistic * statistic).isCloseTo(187.39939, offset(5e-6));
        assertThat(2 * TDistribution.of(28).survivalProbability(-statistic))
                .isCloseTo(6.2715e-14, withPercentage(1e-3));
    }

    @Test
    @Oracle(
            value = "Walker (1962) cricket songs: one line for both against two lines, by NumPy 2 and SciPy 1.17 "
                    + "(numpy.linalg.lstsq, scipy.stats.f)",
            agreement = "relative 1e-9")
    void coincidenceOfTheCricketSongs() {
        assertThat(songs.coincident().statistic()).isCloseTo(95.57288723979421, withPercentage(1e-7));
        assertThat(songs.coincident().pValue()).isCloseTo(5.627674211721249e-13, withPercentage(1e-6));
    }

    @Test
    @Oracle(
            value = "Fisher (1947), hearts of cats, data set 'cats' of the R package MASS: test of equal slopes by R "
                    + "4.2.2; difference at 2.7 kg by NumPy",
            agreement = "all digits listed")
    void slopesOfTheCatsDiffer() {
        GroupedTable cats = GroupedTable.read("ancova_cats.csv");
        SlopeComparison hearts = new SlopeComparison(cats.line("F"), cats.line("M"));
        assertThat(hearts.slopeDifference()).isCloseTo(1.67626469360, offset(5e-12));
        assertThat(hearts.slopeDifferenceStd()).isCloseTo(0.83732554820, offset(5e-12));
        assertThat(hearts.parallel().statistic()).isCloseTo(4.00771, offset(5e-6));
        assertThat(hearts.parallel().pValue()).isCloseTo(0.047225, offset(5e-7));
        assertThat(hearts.coincident().statistic()).isCloseTo(2.041087223265431, withPercentage(1e-8));
        assertThat(hearts.differenceAt(2.7)).isCloseTo(0.36051434980648356, offset(1e-10));
        assertThat(hearts.differenceStdAt(2.7)).isCloseTo(0.37335765188696524, offset(1e-11));
    }

    @Test
    @Oracle(
            value = "Walker (1962) cricket songs: common slope and shift by the general linear model as by R 4.2.2",
            agreement = "relative 1e-10")
    void theGeneralModelAgrees() {
        List<GroupedTable.Row> rows = crickets.rows();
        double[][] design = new double[rows.size()][];
        double[] y = new double[rows.size()];
        double[] weights = new double[rows.size()];
        for (int i = 0; i < y.length; i++) {
            design[i] = new double[] {
                1, rows.get(i).group().equals("niv") ? 1 : 0, rows.get(i).x()
            };
            y[i] = rows.get(i).y();
            weights[i] = 1;
        }
        LinearModel model = LinearModel.fit(design, y, weights, y.length);
        assertThat(model.coefficient(0)).isCloseTo(-7.21090619099, offset(1e-9));
        assertThat(model.std(0)).isCloseTo(2.5509377609862, offset(1e-9));
        assertThat(model.coefficient(1)).isCloseTo(-10.06529123455, offset(1e-9));
        assertThat(model.std(1)).isCloseTo(0.7352622370417, offset(1e-10));
        assertThat(model.coefficient(2)).isCloseTo(3.60275287486, offset(1e-10));
        assertThat(model.squares()).isCloseTo(89.34986854, offset(5e-9));
    }
}
