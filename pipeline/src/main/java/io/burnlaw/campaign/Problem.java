package io.burnlaw.campaign;

/**
 * What is wrong with a file, where, and how to mend it.
 *
 * @param file     path as the user knows it
 * @param line     line of the file, from 1; 0 where the file as a whole is meant
 * @param place    column heading or key; empty text where none
 * @param what     what is wrong, in a few words
 * @param found    what stands there; empty text where nothing can be shown
 * @param expected what should stand there
 * @param mend     what to write or do
 */
public record Problem(String file, int line, String place, String what, String found, String expected, String mend) {}
