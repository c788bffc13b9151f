package io.burnlaw.cli;

/** The command line. */
public final class Burnlaw {

    private Burnlaw() {}

    /**
     * Runs the command line.
     *
     * @param arguments the words of the command line
     */
    public static void main(String[] arguments) {
        System.out.println("burnlaw");
    }
}
