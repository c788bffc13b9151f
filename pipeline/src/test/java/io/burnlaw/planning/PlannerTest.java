package io.burnlaw.planning;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PlannerTest {

    private static final PlanOptions OPTIONS = PlanOptions.defaults();

    private final PlanBasis basis = PlannedMotors.basis(
            PlannedMotors.points(8, 1e6, 3e6, 0.4, 0.03, new SplittableRandom(5)), PlannedMotors.hardware(7.5e6));

    @Test
    void show() {
        long t = System.nanoTime();
        Plan plan = Planner.plan(basis, OPTIONS);
        System.out.println((System.nanoTime() - t) / 1e6 + " ms");
        t = System.nanoTime();
        plan = Planner.plan(basis, OPTIONS);
        System.out.println((System.nanoTime() - t) / 1e6 + " ms");
        System.out.println(plan.toString().replace("PlannedThroat[", "\nPlannedThroat["));
        System.out.println(Planner.throatFor(basis, OPTIONS, 2e6));
        System.out.println(Planner.throat(basis, OPTIONS, 0.008));
        System.out.println(Planner.throatFor(basis, OPTIONS, 6e6));
    }
}
