package io.burnlaw.characterize;

import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.prediction.PredictionCheck;
import java.util.Optional;

/**
 * What the law of one formulation predicts.
 *
 * @param closure how well it predicted the firings that were made
 * @param plan    the next throat, or why none is named
 * @param basis   of the plan; empty where there is no motor to plan for
 */
public record Predictions(PredictionCheck closure, Plan plan, Optional<PlanBasis> basis) {}
