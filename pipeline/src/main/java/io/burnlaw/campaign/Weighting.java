package io.burnlaw.campaign;

/** How points are weighted against each other. */
public enum Weighting {
    /** The rate's coefficient of variation is the same everywhere; its size is estimated from the residuals. */
    PROPORTIONAL(true),
    /** The rate's scatter is the same everywhere; its size is estimated from the residuals. */
    CONSTANT(true),
    /** Each point's own standard uncertainty is taken at its word. */
    MEASURED(false);

    private final boolean estimatesScale;

    Weighting(boolean estimatesScale) {
        this.estimatesScale = estimatesScale;
    }

    /** {@return whether the scatter is estimated from the residuals rather than known} */
    public boolean estimatesScale() {
        return estimatesScale;
    }
}
