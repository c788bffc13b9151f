package io.burnlaw.ballistics;

/** Ignitions that no motor has and closed forms need. */
public final class Ignitions {

    private Ignitions() {}

    /** {@return the whole surface burns from the first instant, without an igniter} */
    public static Ignition instantaneous() {
        return new Ignition(0, 1, 0, 0, 0);
    }
}
