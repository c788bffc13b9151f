package io.burnlaw.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.Oracle;
import io.burnlaw.comparison.Comparisons.NoncentralF;
import org.apache.commons.statistics.distribution.FDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NoncentralFTest {

    @ParameterizedTest
    @CsvSource({
        "3.8853, 2, 12, 10, 0.7015076412047275",
        "4.21, 1, 27, 4, 0.48757495330548334",
        "5.786, 2, 5, 60, 0.9986635202051023",
        "3.34, 2, 28, 0.5, 0.08546823186863162"
    })
    @Oracle(value = "SciPy 1.17, scipy.stats.ncf.sf", agreement = "absolute 1e-10")
    void tailsAgree(double value, int d1, int d2, double noncentrality, double expected) {
        assertThat(NoncentralF.survival(value, d1, d2, noncentrality)).isCloseTo(expected, offset(1e-10));
    }

    @Test
    void withoutAnEffectThePowerIsTheSignificance() {
        double critical = FDistribution.of(2, 9).inverseSurvivalProbability(0.05);
        assertThat(NoncentralF.survival(critical, 2, 9, 0)).isCloseTo(0.05, offset(1e-9));
    }

    @Test
    void theNoncentralityHasThePowerThatWasAskedFor() {
        double lambda = NoncentralF.noncentrality(2, 12, 0.05, 0.9);
        double critical = FDistribution.of(2, 12).inverseSurvivalProbability(0.05);
        assertThat(NoncentralF.survival(critical, 2, 12, lambda)).isCloseTo(0.9, offset(1e-9));
    }
}
