package io.burnlaw.ratelaw;

import java.util.List;
import java.util.Optional;

/** What firings at several temperatures say of the propellant's temperature sensitivity, or why they say nothing. */
public sealed interface TemperatureResult {

    /**
     * The sensitivity was estimated.
     *
     * @param sigmaP               σ_p, of the rate at constant pressure [1/K]
     * @param sigmaPStd            its standard uncertainty [1/K]
     * @param sigmaPInterval       its interval [1/K]
     * @param piK                  π_K, of the pressure at constant geometry [1/K]
     * @param piKInterval          its interval by Fieller's theorem [1/K], or why there is none
     * @param referenceTemperature T₀ [K]
     * @param law                  r(P) at the reference temperature, with the sensitivity's uncertainty in it
     * @param referred             the points with their rates brought to the reference temperature
     * @param temperatureLow       lowest temperature among the points [K]
     * @param temperatureHigh      highest temperature among the points [K]
     * @param sentence             in words
     */
    record Estimated(
            double sigmaP,
            double sigmaPStd,
            Interval sigmaPInterval,
            double piK,
            Interval piKInterval,
            double referenceTemperature,
            RateLaw law,
            List<FitPoint> referred,
            double temperatureLow,
            double temperatureHigh,
            String sentence)
            implements TemperatureResult {
        public Estimated {
            referred = List.copyOf(referred);
        }
    }

    /**
     * It could not be estimated.
     *
     * @param reason a sentence that says why
     * @param mend   a sentence that says which firing would change that
     */
    record NotEstimated(String reason, String mend) implements TemperatureResult {}

    /** {@return the estimate, where there is one} */
    default Optional<Estimated> estimated() {
        return this instanceof Estimated e ? Optional.of(e) : Optional.empty();
    }
}
