package io.burnlaw.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import io.burnlaw.finding.FindingCode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CampaignPlausibilityTest {

    private static final CleanSeries SERIES = CleanSeries.of(6, 51_000);

    @Test
    void cleanFiringsDoNotAccuseEachOther() {
        assertEquals(List.of(), SERIES.toldOfClean());
        assertEquals(List.of(), SERIES.told(SERIES.candidate().firing(), SERIES.clock(1)));
    }

    @Test
    void aMisreadThroatMakesAVelocityThatStandsApart() {
        CleanFiring one = SERIES.candidate();
        double throat = one.firing().throatDiameter().value();
        assertEquals(
                List.of(FindingCode.IMPLAUSIBLE_CSTAR),
                SERIES.told(FaultyRow.of(one.firing()).throat(0.9 * throat).row(), one.pressureTrace()));
    }

    @Test
    void aClockThatRanAtAnotherSpeedShowsInRateAndVelocity() {
        assertEquals(
                List.of(FindingCode.IMPLAUSIBLE_CSTAR, FindingCode.IMPLAUSIBLE_BURN_TIME),
                SERIES.told(SERIES.candidate().firing(), SERIES.clock(1.6)));
    }

    @Test
    void twoFiringsAreNoJury() {
        CleanSeries two = new CleanSeries(SERIES.clean().subList(0, 2), SERIES.candidate());
        assertEquals(List.of(), two.told(SERIES.candidate().firing(), SERIES.clock(1.6)));
    }

    @Test
    void theOrderOfTheFiringsChangesNothing() {
        List<Reduction> all = new ArrayList<>(SERIES.clean());
        Reduction odd =
                CleanSeries.reduced(SERIES.candidate(), SERIES.candidate().firing(), SERIES.clock(1.6));
        all.add(odd);
        List<Reduction> reviewed = CampaignPlausibility.review(all);
        List<Reduction> shuffled = new ArrayList<>(all);
        Collections.shuffle(shuffled, new Random(7));
        List<Reduction> again = CampaignPlausibility.review(shuffled);
        for (int i = 0; i < all.size(); i++) {
            Reduction other = again.get(shuffled.indexOf(all.get(i)));
            assertEquals(reviewed.get(i).findings(), other.findings());
            if (all.get(i) != odd) {
                assertSame(all.get(i), other);
            }
        }
    }
}
