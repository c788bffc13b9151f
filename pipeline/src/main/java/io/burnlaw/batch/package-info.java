/**
 * The law of a formulation that was cast in several batches. In go rate-pressure points with their batches; out come the
 * mean law, the law of each batch, and the band of one firing of a batch not yet cast. Read
 * {@link io.burnlaw.batch.BatchFit} first.
 */
package io.burnlaw.batch;
