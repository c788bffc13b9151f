/**
 * The command line. It only connects the steps: read, characterize, write. Read {@link io.burnlaw.cli.Burnlaw} first.
 */
package io.burnlaw.cli;
