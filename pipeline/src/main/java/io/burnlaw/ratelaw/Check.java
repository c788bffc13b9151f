package io.burnlaw.ratelaw;

/**
 * One thing that a good solution must have.
 *
 * @param name     in a few words
 * @param passed   whether it has it
 * @param sentence with the number
 */
public record Check(String name, boolean passed, String sentence) {}
