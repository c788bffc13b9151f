/**
 * The command line. It only wires: read, characterize, write. Read {@link io.burnlaw.cli.Burnlaw} first.
 */
package io.burnlaw.cli;
