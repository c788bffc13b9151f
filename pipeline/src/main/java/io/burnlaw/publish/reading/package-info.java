/**
 * The way back: from published documents to what can be compared, pooled and planned from. In go documents, which may come
 * from anywhere; out come laws and points in SI, and documents about several campaigns. Read
 * {@link io.burnlaw.publish.reading.PublishedFormulation} first.
 */
package io.burnlaw.publish.reading;
