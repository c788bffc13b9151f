package io.burnlaw.cli;

/** What the process tells its caller. */
enum ExitCode {
    /** All done. */
    DONE(0),
    /** Done, but some firings were rejected, or nothing could be fitted for a formulation. */
    DONE_WITH_REJECTIONS(1),
    /** The command line or the campaign could not be used; nothing was written. */
    UNUSABLE(2),
    /** An output could not be written; the earlier one is as it was. */
    NOT_WRITTEN(3),
    /** A fault of the program. */
    PROGRAM_FAULT(70);

    private final int number;

    ExitCode(int number) {
        this.number = number;
    }

    int number() {
        return number;
    }

    /** {@return the graver of the two} */
    ExitCode and(ExitCode other) {
        return number >= other.number ? this : other;
    }
}
