package io.burnlaw.characterize;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Limits a fault of the program to the firing, strand or formulation at which it happens; the others of the campaign
 * are not lost.
 */
public final class Guard {

    /** A test makes the program fail there on purpose. */
    private static final String FAULT = "burnlaw.fault";

    private Guard() {}

    /**
     * Does the work, and says so where the program fails.
     *
     * @param where  what the work was for, such as {@code firing F-1}
     * @param failed the result where the program fails, from the finding that says so
     */
    public static <T> T around(Supplier<T> work, String where, Function<Finding, T> failed) {
        try {
            if (where.equals(System.getProperty(FAULT))) {
                throw new IllegalStateException("asked for by a test");
            }
            return work.get();
        } catch (RuntimeException | StackOverflowError fault) {
            if (Boolean.getBoolean("burnlaw.trace")) {
                fault.printStackTrace();
            }
            return failed.apply(Finding.of(
                    FindingCode.PROGRAM_FAULT,
                    "The program failed on " + where
                            + ". Check its numbers first: some may be impossible for a firing. If they are right, please"
                            + " report it with its row and its record (the option -Dburnlaw.trace=true before -jar shows the"
                            + " place in the program)."));
        }
    }
}
