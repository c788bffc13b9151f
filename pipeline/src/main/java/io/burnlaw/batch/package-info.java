/**
 * The law of a formulation that was cast in several batches. Input: rate-pressure points with their batches. Output:
 * the mean law, the law of each batch, and the band of one firing of a batch not yet cast. Read
 * {@link io.burnlaw.batch.BatchFit} first.
 */
package io.burnlaw.batch;
