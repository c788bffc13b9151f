package io.burnlaw.simulation;

import io.burnlaw.ballistics.SimulatedFiring;
import io.burnlaw.campaign.Choice;
import io.burnlaw.simulation.CsvText.FixedNumber;
import java.util.List;
import java.util.Map;

/** The truth.yaml of an invented campaign: the true values, which its owner could not measure. */
final class TruthText {

    private static final int DIGITS = 7;

    private TruthText() {}

    static String of(Scenario scenario, List<TrueFiring> firings, Map<Scenario.PlannedStrand, Vessel> strands) {
        YamlText yaml = new YamlText();
        yaml.comment(
                "The true values of this invented campaign. Pressures are absolute. Burnout is the time at which the mean web was"
                        + " gone, counted from the igniter.");
        yaml.plain("format", "burnlaw-truth/1");
        yaml.plain("seed", Long.toString(scenario.seed()));
        yaml.open("formulations");
        scenario.propellants().forEach(propellant -> propellant(yaml, propellant));
        yaml.close();
        if (!firings.isEmpty()) {
            yaml.open("firings");
            firings.forEach(firing -> firing(yaml, firing));
            yaml.close();
        }
        if (!strands.isEmpty()) {
            yaml.open("strands");
            strands.forEach((strand, vessel) -> {
                yaml.open(strand.id());
                yaml.plain("formulation", strand.propellant().id());
                yaml.plain("mean_pressure", megapascal(vessel.pressure()));
                yaml.plain("mean_rate", millimetresPerSecond(vessel.rate()));
                yaml.close();
            });
            yaml.close();
        }
        return yaml.text();
    }

    private static void propellant(YamlText yaml, Scenario.Propellant propellant) {
        yaml.open(propellant.id());
        yaml.plain("density", FixedNumber.digits(propellant.density() / 1e3, DIGITS) + " g/cm3");
        yaml.plain("characteristic_velocity", FixedNumber.digits(propellant.characteristicVelocity(), DIGITS) + " m/s");
        yaml.plain("specific_heat_ratio", FixedNumber.digits(propellant.specificHeatRatio(), DIGITS));
        yaml.plain("rate_scatter", FixedNumber.digits(100 * propellant.rateScatter(), DIGITS) + " %");
        if (propellant.batchScatter() > 0) {
            yaml.plain("batch_scatter", FixedNumber.digits(100 * propellant.batchScatter(), DIGITS) + " %");
        }
        yaml.open("law");
        for (TrueLaw.Piece piece : propellant.law().pieces()) {
            yaml.open(piece.name());
            if (piece.from() > 0) {
                yaml.plain("from", megapascal(piece.from()));
            }
            yaml.plain("rate_at_1_MPa", millimetresPerSecond(piece.rate(1e6)));
            yaml.plain("exponent", FixedNumber.digits(piece.exponent(), DIGITS));
            yaml.close();
        }
        yaml.close();
        yaml.close();
    }

    private static void firing(YamlText yaml, TrueFiring firing) {
        SimulatedFiring fired = firing.fired();
        yaml.open(firing.plan().id());
        yaml.plain("formulation", firing.plan().propellant().id());
        firing.plan().propellant().batch().ifPresent(batch -> {
            yaml.quoted("batch", batch);
            yaml.plain(
                    "batch_factor",
                    FixedNumber.digits(firing.plan().propellant().batchFactor(), DIGITS));
        });
        yaml.plain("rate_factor", FixedNumber.digits(firing.rateFactor(), DIGITS));
        yaml.plain("characteristic_velocity", FixedNumber.digits(firing.characteristicVelocity(), DIGITS) + " m/s");
        yaml.plain("web", FixedNumber.digits(firing.grain().web().value() * 1e3, DIGITS) + " mm");
        yaml.plain("core_offset", FixedNumber.digits(firing.coreOffset() * 1e3, DIGITS) + " mm");
        yaml.plain("outcome", Choice.word(fired.outcome()));
        yaml.plain("maximum_pressure", megapascal(fired.maximumPressure()));
        if (Double.isFinite(fired.meanBurnout())) {
            yaml.plain("burnout", FixedNumber.digits(fired.meanBurnout(), DIGITS) + " s");
        }
        if (!firing.plan().faults().isEmpty()) {
            yaml.open("faults");
            for (FaultKey key : FaultKey.values()) {
                Double value = firing.plan().faults().get(key);
                if (value != null) {
                    yaml.plain(
                            key.key(),
                            FixedNumber.digits(key.dimension().usual().fromSi(value), DIGITS) + " "
                                    + key.dimension().usual().symbol());
                }
            }
            yaml.close();
        }
        yaml.close();
    }

    private static String megapascal(double pascal) {
        return FixedNumber.digits(pascal / 1e6, DIGITS) + " MPa";
    }

    private static String millimetresPerSecond(double rate) {
        return FixedNumber.digits(rate * 1e3, DIGITS) + " mm/s";
    }

    /** Keys and values in the order in which they were said. */
    static final class YamlText {

        private final StringBuilder text = new StringBuilder();
        private int depth;

        /** A value as it stands: a number, a quantity, a word. */
        YamlText plain(String key, String value) {
            line(key, " " + value);
            return this;
        }

        /** A text that may hold anything printable. */
        YamlText quoted(String key, String value) {
            return plain(
                    key, '"' + value.replace("\\", "\\\\").replace("\"", "\\\"").replaceAll("\\s+", " ") + '"');
        }

        /** Opens a mapping. */
        YamlText open(String key) {
            line(key, "");
            depth++;
            return this;
        }

        /** Closes the mapping opened last. */
        YamlText close() {
            depth--;
            return this;
        }

        YamlText comment(String line) {
            text.append("# ").append(line).append('\n');
            return this;
        }

        private void line(String key, String rest) {
            text.append("  ".repeat(depth)).append(key).append(':').append(rest).append('\n');
        }

        String text() {
            return text.toString();
        }
    }
}
