package io.burnlaw.finding;

import java.util.Locale;

/**
 * The complete list of findings: what can be wrong or odd in a trace, a burn or a law. docs/findings.md is made from
 * it, so every code is explained. A code is never reused with another meaning.
 */
public enum FindingCode {
    UNUSABLE_ROW(
            Family.PLAUSIBILITY,
            Severity.REJECTION,
            "The row of the firing log cannot be used",
            "A cell of the row is missing, is no number, or describes a grain or nozzle that cannot exist.",
            "Correct the row in the firing log; the other firings are not affected."),
    UNREADABLE_TRACE(
            Family.TRACE,
            Severity.REJECTION,
            "The trace cannot be read",
            "The file is missing, empty, not a table of numbers, or lacks the column that was asked for.",
            "Export the record again as text with a heading row, and check the path in the firing log."),
    SET_ASIDE(
            Family.PLAUSIBILITY,
            Severity.REJECTION,
            "Excluded in the firing log",
            "The firing log says that this firing is not to be used.",
            "Write yes in the column use to bring it back."),
    ZERO_OFFSET(
            Family.TRACE,
            Severity.NOTE,
            "Zero offset",
            "The quiet part before ignition does not read zero; the offset is subtracted from the record.",
            "Check the sensor's zero before the next firing."),
    NO_QUIET_PART(
            Family.TRACE,
            Severity.CAUTION,
            "No quiet part before ignition",
            "The record begins when the motor is already burning, so its zero cannot be read there.",
            "The zero was taken from the end of the record, or assumed to be right; its uncertainty is in"
                    + " the budget. Start the record before the igniter fires."),
    BASELINE_DRIFT(
            Family.TRACE,
            Severity.CAUTION,
            "Baseline drift",
            "The zero after the burn differs from the zero before it; a straight line between the two is subtracted.",
            "Shield the sensor and its cable from heat, and let it warm up before the firing."),
    SATURATION(
            Family.TRACE,
            Severity.CAUTION,
            "Saturation",
            "The record is flat at its highest reading: the sensor or the amplifier was at its limit.",
            "Use a sensor of a larger range. Peak and mean pressure of this firing are too low."),
    BEYOND_RANGE(
            Family.TRACE,
            Severity.CAUTION,
            "Beyond the calibrated range",
            "Readings are outside of the calibration or of the sensor's range.",
            "The last straight piece of the calibration was extended to them. Calibrate up to the pressures"
                    + " that you expect."),
    SPIKES(
            Family.TRACE,
            Severity.NOTE,
            "Spikes",
            "Single samples differ strongly from their neighbours. Each was replaced by the median of its"
                    + " neighbours.",
            "Check cables and connectors."),
    DROPPED_SAMPLES(
            Family.TRACE,
            Severity.CAUTION,
            "Dropped samples",
            "There are gaps in an otherwise even record.",
            "The gaps were bridged by straight lines. Check the logger's buffer."),
    UNEVEN_SAMPLING(
            Family.TRACE,
            Severity.NOTE,
            "Uneven sampling",
            "The time between samples is not constant.",
            "Nothing to do: integrals use the time stamps."),
    REPEATED_TIMESTAMP(
            Family.TRACE,
            Severity.NOTE,
            "Repeated time stamps",
            "Several samples have the same time; their mean was used.",
            "Log the time with more digits."),
    BACKWARD_TIME(
            Family.TRACE,
            Severity.REJECTION,
            "Time runs backward",
            "A time stamp is earlier than the one before it.",
            "The file may hold two records, or the clock was set during the firing. Cut the file to one record."),
    COARSE_SAMPLING(
            Family.TRACE,
            Severity.CAUTION,
            "Coarse sampling",
            "There are too few samples for the events that must be timed.",
            "Sample at least ten times within the fastest event that matters."),
    MAINS_HUM(
            Family.TRACE,
            Severity.NOTE,
            "Mains hum",
            "The noise has a clear peak at 50 or 60 Hz or at a multiple of it. A steady sine is subtracted"
                    + " from the record.",
            "Ground the sensor at one point only."),
    EXCESS_NOISE(
            Family.TRACE,
            Severity.CAUTION,
            "Excess noise",
            "The record is very noisy compared with its pressure.",
            "The noise is included in the uncertainty. Check shielding and the sensor's range."),
    TRUNCATED(
            Family.TRACE,
            Severity.REJECTION,
            "The record ends too early",
            "The record ends before the web burned out.",
            "Record longer than the longest burn that you expect."),
    NO_IGNITION(
            Family.BURNING,
            Severity.REJECTION,
            "No ignition",
            "Nothing in the record rises clearly above its noise.",
            "Check that this is the trace of this firing, and that the column and the units are right."),
    HANG_FIRE(
            Family.BURNING,
            Severity.NOTE,
            "Hang-fire",
            "The main rise comes long after the first sign of burning.",
            "The rate is not affected. Keep the waiting time after a misfire."),
    SMOULDER(
            Family.BURNING,
            Severity.CAUTION,
            "Smoulder before the rise",
            "The motor burned at low pressure before its main rise.",
            "The web burned in that time is included. The burn at low pressure may give a rate of its own."),
    BURNED_BEFORE_RISE(
            Family.BURNING,
            Severity.CAUTION,
            "Web burned before the main rise",
            "Part of the propellant burned before the main rise, from the whole surface or from a part of it.",
            "Use a stronger igniter. The rate of this firing is less certain, or is used only where others confirm it."),
    SLOW_BURNING(
            Family.BURNING,
            Severity.CAUTION,
            "Slow burning",
            "The motor stayed at low pressure for its whole burn.",
            "Check the unit of the record first. If it is right, the motor burned in the slow regime. A"
                    + " smaller throat may avoid it, but choose none that the case cannot stand."),
    CHUFFING(
            Family.BURNING,
            Severity.REJECTION,
            "Chuffing",
            "The pressure comes in separate pulses.",
            "This firing has no single rate. Raise the pressure or lengthen the chamber. Keep away until the"
                    + " motor has been out for a long time."),
    PRESSURE_COLLAPSE(
            Family.BURNING,
            Severity.REJECTION,
            "Pressure collapse",
            "The pressure fell within milliseconds while web was left: the case burst or a closure was"
                    + " thrown off.",
            "Do not fire this hardware again before you know the cause."),
    BLOCKAGE(
            Family.BURNING,
            Severity.CAUTION,
            "Transient blockage",
            "A short pressure hump in the middle of the burn: something passed the throat.",
            "Look for a torn inhibitor or slag in the nozzle."),
    THROAT_EROSION(
            Family.BURNING,
            Severity.NOTE,
            "Throat erosion or deposit",
            "The throat changed its size. Its area is assumed to change evenly over the burn.",
            "Measure the throat after every firing."),
    UNEVEN_WEB(
            Family.BURNING,
            Severity.NOTE,
            "Uneven web",
            "The tail-off is longer than the chamber needs to empty: the web did not burn through everywhere"
                    + " at once. The rate is that of the mean web.",
            "Check the core for eccentricity."),
    EROSIVE_BURNING(
            Family.BURNING,
            Severity.CAUTION,
            "Hump at the start",
            "The start burned faster than the surface explains: erosive burning, or an igniter that is too strong.",
            "Widen the core, shorten the grain, or take less igniter."),
    ABOVE_CASE_LIMIT(
            Family.BURNING,
            Severity.CAUTION,
            "Above the case limit",
            "The highest pressure was above the stated limit of the case.",
            "Do not fire this configuration again. Inspect the case before any further use."),
    GRAIN_MASS(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "Mass and volume disagree",
            "The grain's mass divided by its volume (from the dimensions in the log) does not give the"
                    + " density of the propellant.",
            "Check mass, core, length and number of segments; a grain with voids does not burn like a" + " sound one."),
    CHAMBER_VOLUME(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "Chamber and grain do not fit",
            "The chamber in the log is smaller than the propellant, or many times larger than the grain.",
            "Check the unit of the chamber's volume. The usual chamber for such a grain was used instead."),
    RECORD_AGAINST_GRAIN(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "Record and grain do not fit",
            "The grain in the log and the recorded pressure do not agree: the two rates differ, the rate"
                    + " drifts as the web burns, or the web ends at another time than the pressure.",
            "Check which surfaces burned, diameters against radii, the length of one segment, and the units of lengths."),
    IMPLAUSIBLE_CSTAR(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "Implausible characteristic velocity",
            "c* from the pressure integral differs from what this propellant can give, or from the other firings.",
            "Check the mass, the throat, the density and the units of the pressure column."),
    IMPLAUSIBLE_BURN_TIME(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "Implausible burn time",
            "The burn time gives a rate that differs far from that of the other firings.",
            "Check the time column's unit and the web."),
    THRUST_DERIVED(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "Pressure derived from thrust",
            "There was no pressure record: the pressure was worked out from the thrust.",
            "Treat it as a point of lower grade. Measure pressure where you can."),
    IGNITER_UNSTATED(
            Family.PLAUSIBILITY,
            Severity.NOTE,
            "Igniter not stated",
            "The flame spread slowly over the surface, so the igniter's gas may affect rate and"
                    + " c*. A usual amount was subtracted; all firings share its uncertainty.",
            "Weigh the igniter's charge and add a column igniter_mass to the firing log, with its unit."),
    EXIT_UNKNOWN(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "No exit diameter",
            "Only thrust was recorded, and the log has no exit diameter. The pressure was worked out from"
                    + " mass and c*, or with a usual expansion ratio of the nozzle.",
            "Measure the nozzle's exit and add a column exit_diameter to the firing log, with its unit."),
    TIMED_ONLY(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "Timed, not recorded",
            "There was no record: the pressure was worked out from the burn time, the grain, the throat and c*.",
            "The point counts as less certain. Record the pressure where you can."),
    SAME_RECORD(
            Family.PLAUSIBILITY,
            Severity.CAUTION,
            "The same record twice",
            "Two rows of the log have records with the same bytes: a copy under another name.",
            "Give each row its own record, or write no into the column use of one of them: a firing that counts twice makes"
                    + " intervals too narrow."),
    PROGRAM_FAULT(
            Family.PLAUSIBILITY,
            Severity.REJECTION,
            "A fault of the program",
            "The program failed on this row; the other rows are not affected.",
            "Check units and dimensions of the row first: a number that no firing has can cause this. If"
                    + " they are right, please report it with this row and its record."),
    AMBIENT_ASSUMED(
            Family.PLAUSIBILITY,
            Severity.NOTE,
            "Ambient pressure assumed",
            "No ambient pressure was stated; 101.325 kPa was assumed.",
            "Write the ambient pressure of the day into the campaign or the firing log."),
    FEW_POINTS(
            Family.LAW,
            Severity.CAUTION,
            "Few points",
            "There are too few points for a reliable interval.",
            "Fire again at another pressure that the case is known to stand."),
    TEMPERATURE_NOT_LOGGED(
            Family.LAW,
            Severity.NOTE,
            "Grain temperature not logged",
            "Warm grains burn faster than cold ones, and the log does not say how warm these were. The law"
                    + " holds at an unknown temperature. If the grains got warmer or colder as the pressures rose, the"
                    + " exponent is wrong as well.",
            "Add a column grain_temperature to the firing log, and mix low and high pressures on each day."),
    NARROW_RANGE(
            Family.LAW,
            Severity.CAUTION,
            "Narrow pressure range",
            "The points span less than a factor of three in pressure.",
            "Fire at a lower pressure, or at a higher one that the case is known to stand: a wider span"
                    + " narrows the exponent's interval."),
    OUTLIER(
            Family.LAW,
            Severity.CAUTION,
            "Outlying point",
            "A point is far from the law that the others follow.",
            "It was kept. Check its trace and its row in the log before you trust the point or the law."),
    UNSTABLE_EXPONENT(
            Family.LAW,
            Severity.CAUTION,
            "Unstable exponent",
            "The exponent, or its upper limit, reaches 1: a motor may have no steady pressure.",
            "Do not fire a motor there."),
    WITHIN_BETWEEN_DISAGREE(
            Family.LAW,
            Severity.CAUTION,
            "Within and between firings disagree",
            "The exponent along single burns differs from the one between firings.",
            "Usually the geometry or c* is wrong: check core, length, inhibited ends and throat."),
    POOR_CLOSURE(
            Family.LAW,
            Severity.CAUTION,
            "Poor closure",
            "The law does not reproduce the traces that it was fitted to.",
            "Do not design with it before you have found the reason."),
    ZERO_OFFSET_RIVAL(
            Family.LAW,
            Severity.NOTE,
            "A zero offset would explain the bend",
            "A constant error of the pressure sensor would bend the low end in the same way.",
            "Check the zero of the low-pressure firings before you believe in a regime."),
    LACK_OF_FIT(
            Family.LAW,
            Severity.CAUTION,
            "Lack of fit",
            "Repeated firings agree better with each other than with the law.",
            "The form of the law, or the reduction of some firing, is wrong. Look at the residuals."),
    BATCH_OR_REGIME(
            Family.LAW,
            Severity.CAUTION,
            "Batch or regime",
            "Different batches were fired at different pressures, so either could cause the difference in rate.",
            "Fire one batch below and above the pressure that is named."),
    SLOW_REGIME(
            Family.LAW,
            Severity.CAUTION,
            "Slow regime",
            "Below a threshold pressure the propellant burns by a slower law.",
            "Keep the motor above the threshold, unless you want the slow burn."),
    FEW_FIRINGS_DECIDE(
            Family.LAW,
            Severity.CAUTION,
            "A few firings decide how many laws there are",
            "The search for regimes gives one answer with these firings and another without them.",
            "Repeat them at the same pressures before you trust either answer."),
    CURVED_LAW(
            Family.LAW,
            Severity.NOTE,
            "Curved law",
            "One power law does not hold over the whole range, and no break is proven: the exponent may change smoothly.",
            "Fire at more pressures, between these and beyond them, as far as the case is known to stand."
                    + " Use each law only near its own points.");

    /** What a code is about. */
    public enum Family {
        /** The record. */
        TRACE,
        /** The burn. */
        BURNING,
        /** Whether the numbers can be true. */
        PLAUSIBILITY,
        /** The law over several firings. */
        LAW
    }

    private final Family family;
    private final Severity usualSeverity;
    private final String title;
    private final String meaning;
    private final String advice;

    FindingCode(Family family, Severity usualSeverity, String title, String meaning, String advice) {
        this.family = family;
        this.usualSeverity = usualSeverity;
        this.title = title;
        this.meaning = meaning;
        this.advice = advice;
    }

    /** {@return the code as it stands in files, in kebab-case} */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** {@return what it is about} */
    public Family family() {
        return family;
    }

    /** {@return the severity unless the case says otherwise} */
    public Severity usualSeverity() {
        return usualSeverity;
    }

    /** {@return a few words for headings} */
    public String title() {
        return title;
    }

    /** {@return what was seen, in one sentence} */
    public String meaning() {
        return meaning;
    }

    /** {@return what was done about it, or what to do} */
    public String advice() {
        return advice;
    }
}
