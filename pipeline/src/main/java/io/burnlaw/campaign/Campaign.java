package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A campaign: the propellants, their firings and how they were measured, in SI.
 *
 * @param licence              SPDX identifier of the data's licence
 * @param note                 the campaign's remark, shown on the report
 * @param ambientPressure      [Pa, absolute]
 * @param ambientAssumed       whether nobody stated it
 * @param referenceTemperature to which rates are referred [K]
 * @param formulations         at least one, in the order of the file
 * @param hardware             what the case can stand, where stated
 * @param firings              rows that can be reduced, in the order of the log
 * @param strands              strands with a record
 * @param batches              the casting that a firing, point or strand came from, by its id; where the tables say
 * @param unusableRows         rows that cannot be used
 * @param inputs               files read so far (traces are added as they are read)
 * @param notes                what was guessed or assumed when the files were read, as sentences
 */
public record Campaign(
        Path folder,
        String title,
        Optional<String> preparedBy,
        Optional<String> licence,
        Optional<String> note,
        double ambientPressure,
        boolean ambientAssumed,
        OptionalDouble referenceTemperature,
        List<Formulation> formulations,
        Hardware hardware,
        ReductionSettings reduction,
        FitSettings fit,
        List<Firing> firings,
        List<DirectPoint> points,
        List<Strand> strands,
        Map<String, String> batches,
        List<UnusableRow> unusableRows,
        List<InputFile> inputs,
        List<String> notes) {

    public Campaign {
        formulations = List.copyOf(formulations);
        firings = List.copyOf(firings);
        points = List.copyOf(points);
        strands = List.copyOf(strands);
        batches = Map.copyOf(batches);
        unusableRows = List.copyOf(unusableRows);
        inputs = List.copyOf(inputs);
        notes = List.copyOf(notes);
    }

    /**
     * A row of the log that describes no firing that could be reduced; the other rows are used.
     *
     * @param formulation id of the propellant as written, empty text where even that is missing
     * @param problems    what is wrong with it, at least one
     */
    public record UnusableRow(String id, String formulation, List<Problem> problems) {

        public UnusableRow {
            problems = List.copyOf(problems);
            if (problems.isEmpty()) {
                throw new IllegalArgumentException("a row is unusable for at least one reason: " + id);
            }
        }
    }

    /**
     * A file that was read, so that a result can be traced to it.
     *
     * @param path   below the campaign folder, with {@code /}
     * @param sha256 of its bytes, in hexadecimal
     */
    public record InputFile(String path, String sha256, long bytes) {}

    /**
     * How laws are fitted.
     *
     * @param confidence level of all intervals [1], between 0.5 and 0.999
     * @param seed       of every random number
     * @param pressure   what is done about the uncertainty of the pressures, where points carry one
     * @param robust     whether a Huber fit is reported beside the plain one
     */
    public record FitSettings(
            double confidence, long seed, Weighting weighting, PressureErrors pressure, boolean robust) {

        /** {@return the settings that hold where the campaign says nothing} */
        public static FitSettings defaults() {
            return new FitSettings(0.95, 20260101L, Weighting.PROPORTIONAL, PressureErrors.EFFECTIVE_VARIANCE, false);
        }
    }

    /**
     * How a firing is reduced; see docs/methods.md.
     *
     * @param burnoutEvent      which estimate of the web burnout bounds the burn time
     * @param ignitionThreshold share of the highest gauge pressure at which the web is taken to burn [1]
     * @param endThreshold      share of the highest gauge pressure that bounds the action time [1]
     */
    public record ReductionSettings(
            Method method, BurnoutEvent burnoutEvent, double ignitionThreshold, double endThreshold) {

        /** Which rate of a firing goes into the law. */
        public enum Method {
            /** Web over burn time. */
            THICKNESS_TIME,
            /** Web over burn time, corrected by the share of the pressure integral in it. */
            MASS_BALANCE,
            /** Rate along the burn from continuity. */
            INSTANTANEOUS
        }

        /** How the web burnout is found. */
        public enum BurnoutEvent {
            /** When the mean web was gone, by the integral of the tail-off. */
            MEAN_WEB,
            /** Bisector of the tangents to the level part and to the tail-off. */
            TANGENT_BISECTOR,
            /** Where the curve bends most. */
            MAXIMUM_CURVATURE
        }

        /** {@return the settings that hold where the campaign says nothing} */
        public static ReductionSettings defaults() {
            return new ReductionSettings(Method.MASS_BALANCE, BurnoutEvent.MEAN_WEB, 0.10, 0.10);
        }
    }

    /**
     * A rate-pressure point that was measured directly: a strand, or a burn timed by eye.
     *
     * @param id          unique in the campaign
     * @param pressure    [Pa, absolute]
     * @param rate        [m/s], as stated or as length over time, with its uncertainty
     * @param temperature of the sample [K]
     * @param setAside    why it is not to be used; empty where it is
     * @param row         line of the table, for messages
     */
    public record DirectPoint(
            String id,
            String formulation,
            Measured pressure,
            Measured rate,
            OptionalDouble temperature,
            Optional<String> setAside,
            Optional<String> note,
            int row) {}
}
