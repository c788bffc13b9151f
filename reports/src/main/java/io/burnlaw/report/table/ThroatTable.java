package io.burnlaw.report.table;

import static io.burnlaw.report.document.Unit.MM;
import static io.burnlaw.report.document.Unit.MPA;
import static io.burnlaw.report.document.Unit.SECOND;

import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Plan.PlannedThroat;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Throats and what each would do, one a row. */
public final class ThroatTable {

    private ThroatTable() {}

    /** {@return the ladder of a plan, and before it the next firing's throat where that is none of its rungs} */
    public static TypedTable<PlannedThroat> of(Plan plan) {
        PlannedThroat next = plan.next();
        boolean apart = next != null && plan.ladder().stream().noneMatch(each -> same(each, next));
        return of(apart ? Stream.concat(Stream.of(next), plan.ladder().stream()).toList() : plan.ladder(), next);
    }

    /** {@return some throats, of which one may be that of the next firing} */
    public static TypedTable<PlannedThroat> of(List<PlannedThroat> throats, @Nullable PlannedThroat next) {
        return new TypedTable<>("throats", "throats", throats)
                .quantity("throat", MM, "Diameter.", PlannedThroat::throatDiameter)
                .truth("next", "Whether it is that of the next firing.", row -> next != null && same(row, next))
                .quantity("mean_pressure", MPA, "Mean over the burn, absolute.", PlannedThroat::equilibriumPressure)
                .quantity("peak_pressure", MPA, "Highest of the burn, absolute.", PlannedThroat::maxPressure)
                .quantity("burn_time", SECOND, "Burn time.", PlannedThroat::burnTime)
                .number("exponent_uncertainty", "Of the law once it is fired.", PlannedThroat::exponentStdAfter)
                .truth("allowed", "Whether it stays within what the case allows.", PlannedThroat::allowed)
                .words("reason", "Why it is not allowed.", PlannedThroat::reason)
                .words("remark", "What else must be known of it.", PlannedThroat::remark);
    }

    private static boolean same(PlannedThroat throat, PlannedThroat other) {
        return throat.throatDiameter().equals(other.throatDiameter());
    }
}
