package io.burnlaw.batch;

/** What the points of several batches gave. */
public sealed interface BatchResult permits BatchLaw, BatchResult.NotFitted {

    /**
     * There is no law over batches.
     *
     * @param reason a sentence that says why
     * @param advice a sentence that says what would mend it
     */
    record NotFitted(String reason, String advice) implements BatchResult {}
}
