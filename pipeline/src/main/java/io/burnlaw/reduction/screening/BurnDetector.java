package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/** One thing to look for in a burn, before its events are known. */
@FunctionalInterface
interface BurnDetector {

    /**
     * Looks.
     *
     * @param burn  what is known of the firing
     * @param shape the record's outline
     * @return what was seen, none where nothing was
     */
    List<Finding> look(Burn burn, BurnShape shape);
}
