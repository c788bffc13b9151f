/**
 * Everything that reads what somebody else wrote, ready to be given any bytes at all. The build replays the kept inputs
 * ({@link io.burnlaw.fuzz.FuzzCorpusTest}); {@code mvn -Pfuzz} looks for new ones.
 */
package io.burnlaw.fuzz;
