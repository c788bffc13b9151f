package io.burnlaw.report.document;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * coefficients.json: only the laws to design with, for other tools. Plain numbers, each with its unit in the name of
 * its member.
 *
 * @param format kind and major version of the file
 * @param title of the campaign
 * @param preparedBy who prepared it
 * @param licence SPDX identifier
 * @param created when it was made
 * @param convention what the numbers mean, in one sentence
 * @param formulations in the order of the campaign
 * @param cautions to show wherever a number could be acted on
 */
public record Coefficients(
        String format,
        String title,
        @Nullable String preparedBy,
        @Nullable String licence,
        @Nullable String created,
        String convention,
        List<Propellant> formulations,
        List<String> cautions) {

    /** Name of its file. */
    public static final String FILE = "coefficients.json";

    /** The format of the file. */
    public static final String FORMAT = "burnlaw-coefficients/1";

    /**
     * A propellant.
     *
     * @param id as in the tables
     * @param title what people read
     * @param densityGramPerCm3 as measured [g/cm3]
     * @param characteristicVelocityMetrePerSecond pooled c* [m/s]
     * @param answer the laws in words
     * @param laws one for each range of pressure, from low to high; none where nothing could be fitted
     */
    public record Propellant(
            String id,
            String title,
            @Nullable Double densityGramPerCm3,
            @Nullable Double characteristicVelocityMetrePerSecond,
            String answer,
            List<UseLaw> laws) {

        public Propellant {
            laws = List.copyOf(laws);
        }
    }

    /**
     * A law and where it was measured.
     *
     * @param regime the trade word for it; absent for the only law
     * @param pressureLowMegapascal lower end of the measured range, absolute [MPa]
     * @param pressureHighMegapascal upper end, absolute [MPa]
     * @param mmPerSecondMegapascal for rates in mm/s and pressures in MPa
     * @param inchPerSecondPsi for rates in in/s and pressures in psi, absolute
     * @param metrePerSecondPascal for rates in m/s and pressures in Pa
     * @param referencePressureMegapascal where the covariance is given, absolute [MPa]
     * @param rateAtReferenceMmPerSecond the rate there [mm/s]
     * @param covariance of (ln rate at the reference, n)
     * @param points how many it rests on
     */
    public record UseLaw(
            @Nullable String regime,
            double pressureLowMegapascal,
            double pressureHighMegapascal,
            InUnits mmPerSecondMegapascal,
            @Nullable InUnits inchPerSecondPsi,
            @Nullable InUnits metrePerSecondPascal,
            double referencePressureMegapascal,
            double rateAtReferenceMmPerSecond,
            List<List<Double>> covariance,
            int points) {

        public UseLaw {
            covariance = List.copyOf(covariance);
        }
    }

    /**
     * r = a P^n in a pair of units.
     *
     * @param a the coefficient
     * @param aLow lower end of its interval
     * @param aHigh upper end of its interval
     * @param n the exponent
     * @param level confidence of the interval
     */
    public record InUnits(
            double a,
            @Nullable Double aLow,
            @Nullable Double aHigh,
            double n,
            @Nullable Double level) {}

    public Coefficients {
        formulations = List.copyOf(formulations);
        cautions = List.copyOf(cautions);
    }

    /**
     * The coefficients of a document.
     *
     * @param document the document
     * @return its laws to design with
     */
    public static Coefficients of(Characterization document) {
        return new Coefficients(
                FORMAT,
                document.campaign().title(),
                document.campaign().preparedBy(),
                document.campaign().licence(),
                document.created(),
                "r = a * P^n with P absolute; each law is valid only from pressure_low_megapascal to pressure_high_megapascal.",
                document.formulations().stream().map(Coefficients::propellant).toList(),
                document.cautions());
    }

    private static Propellant propellant(Formulation formulation) {
        return new Propellant(
                formulation.id(),
                formulation.title(),
                value(formulation.density()),
                value(formulation.characteristicVelocity()),
                formulation.verdict(),
                formulation.useLaws().stream().map(Coefficients::law).toList());
    }

    private static UseLaw law(Law law) {
        return new UseLaw(
                law.regime(),
                law.pressureLow().value(),
                law.pressureHigh().value(),
                new InUnits(
                        law.coefficient().value(),
                        law.coefficient().low(),
                        law.coefficient().high(),
                        law.exponent().value(),
                        law.coefficient().level()),
                pair(law, "[psi]", "[in_i]/s"),
                pair(law, "Pa", "m/s"),
                law.referencePressure().value(),
                law.rateAtReference().value(),
                law.covariance(),
                law.pointsUsed());
    }

    private static @Nullable InUnits pair(Law law, String pressure, String rate) {
        return law.unitPairs().stream()
                .filter(each ->
                        each.pressureUnit().equals(pressure) && each.rateUnit().equals(rate))
                .findFirst()
                .map(each -> new InUnits(
                        each.coefficient(),
                        each.low(),
                        each.high(),
                        each.exponent(),
                        law.coefficient().level()))
                .orElse(null);
    }

    private static @Nullable Double value(@Nullable Quantity quantity) {
        return quantity == null ? null : quantity.value();
    }
}
