/**
 * Whether the law reproduces the traces that it was fitted to. Input: the law, its points and the measured firings.
 * Output: each firing as predicted by a law that was fitted without it, and the errors of these predictions. Read
 * {@link io.burnlaw.prediction.LeaveOneOut} first.
 */
package io.burnlaw.prediction;
