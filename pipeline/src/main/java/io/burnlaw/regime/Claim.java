package io.burnlaw.regime;

/** What the points allow to be said about a change of regime. */
public enum Claim {
    /** One power law is enough. */
    SINGLE_LAW,
    /** One power law is not enough, but a smooth curve fits decisively better than laws with breaks between them. */
    SMOOTH_CURVE,
    /** One power law is not enough; whether it breaks or bends smoothly cannot be told from these points. */
    BEND,
    /** One power law is not enough, and breaks beat every smooth rival. */
    BREAK
}
