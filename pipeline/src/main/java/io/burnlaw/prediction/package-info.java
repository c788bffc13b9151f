/**
 * Whether the law gives back the traces that it was made from. In go the law, its points and the measured firings; out
 * comes each firing as predicted from a law made without it, and how well that fits. Read
 * {@link io.burnlaw.prediction.LeaveOneOut} first.
 */
package io.burnlaw.prediction;
