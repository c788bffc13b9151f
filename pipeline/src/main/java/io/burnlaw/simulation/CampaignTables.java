package io.burnlaw.simulation;

import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.quantity.Unit;
import io.burnlaw.simulation.CsvText.FixedNumber;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** The tables, measured with the scenario's instruments. */
final class CampaignTables {

    /** Columns of the log that may be missing. */
    static final List<String> OPTIONAL =
            List.of("throat_diameter_after", "exit_diameter", "propellant_mass", "grain_temperature", "chamber_volume");

    private final Scenario scenario;
    private final Scenario.Instruments instruments;

    CampaignTables(Scenario scenario) {
        this.scenario = scenario;
        this.instruments = scenario.instruments();
    }

    CsvText firings(List<TrueFiring> firings) {
        CsvText table =
                new CsvText(List.of("firing", "formulation", "batch", "trace", "grain", "segments", "inhibited_ends"));
        for (TrueFiring firing : firings) {
            Scenario.PlannedFiring plan = firing.plan();
            Randomness random = Randomness.of(scenario.seed(), "calipers " + plan.id());
            table.row();
            table.cell("firing", plan.id());
            table.cell("formulation", plan.propellant().id());
            plan.propellant().batch().ifPresent(batch -> table.cell("batch", batch));
            table.cell("trace", plan.timed().isPresent() ? "" : "traces/" + plan.id() + ".csv");
            plan.timed()
                    .ifPresent(share -> table.cell(
                            "burn_time [s]",
                            // A camera sees fire from the igniter on until the last of the web is gone.
                            FixedNumber.decimals(
                                    firing.fired().lastBurnout() * (1 + share * random.nextGaussian()), 2)));
            Scenario.WrittenGrain written = plan.logged();
            table.cell("grain", written.kind().orElse(plan.grain().kind()));
            table.cell(
                    "segments",
                    Integer.toString(written.counts()
                            .getOrDefault("segments", plan.grain().segments())));
            int inhibited =
                    written.counts().getOrDefault("inhibited_ends", plan.grain().inhibitedEnds());
            table.cell("inhibited_ends", inhibited == 0 ? "" : Integer.toString(inhibited));
            plan.grain().tableName().ifPresent(path -> table.cell("surface_table", path));
            Map<String, Double> dimensions = new TreeMap<>(written.dimensions());
            firing.description().dimensions().forEach((name, length) -> dimensions.putIfAbsent(name, length.value()));
            dimensions.forEach((name, length) -> table.cell(name + " [mm]", length(length, random)));
            table.cell("throat_diameter [mm]", length(plan.throat(), random));
            String after =
                    plan.throatAfter().isPresent() ? length(plan.throatAfter().getAsDouble(), random) : "";
            table.cell("throat_diameter_after [mm]", after);
            table.cell(
                    "exit_diameter [mm]",
                    plan.exit().isPresent() ? length(plan.exit().getAsDouble(), random) : "");
            table.cell("propellant_mass [g]", mass(firing, random));
            plan.starter()
                    .filter(Scenario.Starter::logged)
                    .ifPresent(
                            starter -> table.cell("igniter_mass [g]", FixedNumber.decimals(1e3 * starter.mass(), 2)));
            plan.temperature()
                    .ifPresent(kelvin -> table.cell(
                            "grain_temperature [degC]", FixedNumber.decimals(Unit.DEGREE_CELSIUS.fromSi(kelvin), 1)));
            scenario.hardware()
                    .volume()
                    .ifPresent(volume -> table.cell("chamber_volume [cm3]", FixedNumber.decimals(volume * 1e6, 0)));
            table.cell("use", plan.use().orElse(""));
            table.cell("note", plan.note().orElse(""));
        }
        instruments.unlogged().forEach(table::drop);
        return table;
    }

    /** A grain's surface table, as a campaign has it. */
    static CsvText surface(GrainDescription grain) {
        CsvText table = new CsvText(List.of("web [mm]", "area [mm2]"));
        for (GrainDescription.SurfacePoint point : grain.surface()) {
            table.row();
            table.cell("web [mm]", FixedNumber.decimals(point.web() * 1e3, 4));
            table.cell("area [mm2]", FixedNumber.decimals(point.surface() * 1e6, 3));
        }
        return table;
    }

    private String length(double metres, Randomness random) {
        double seen = metres + instruments.caliper() * random.nextGaussian();
        double step = instruments.step();
        String text = FixedNumber.decimals(
                Math.rint(seen / step) * step * 1e3, FixedNumber.decimalsFor(Unit.MILLIMETRE, step));
        return instruments.stated() && instruments.caliper() > 0
                ? text + " ± " + FixedNumber.digits(instruments.caliper() * 1e3, 2)
                : text;
    }

    private String mass(TrueFiring firing, Randomness random) {
        double seen = firing.motor().density() * firing.grain().volume(0) + instruments.scale() * random.nextGaussian();
        String text = FixedNumber.decimals(seen * 1e3, 1);
        return instruments.stated() && instruments.scale() > 0
                ? text + " ± " + FixedNumber.digits(instruments.scale() * 1e3, 2)
                : text;
    }

    CsvText points() {
        CsvText table = new CsvText(List.of("point", "formulation", "batch", "pressure [MPa]", "pressure_kind"));
        for (Scenario.PlannedPoint point : scenario.points()) {
            Randomness random = Randomness.of(scenario.seed(), "point " + point.id());
            Scenario.Propellant propellant = point.propellant();
            double rate = propellant.law().applyAsDouble(point.pressure())
                    * StrictMath.exp(propellant.rateScatter() * random.nextGaussian())
                    * propellant.batchFactor()
                    * TrueFiring.temperatureFactor(
                            scenario, propellant, point.temperature().orElse(Double.NaN));
            table.row();
            table.cell("point", point.id());
            table.cell("formulation", propellant.id());
            propellant.batch().ifPresent(batch -> table.cell("batch", batch));
            table.cell("pressure [MPa]", FixedNumber.decimals(point.pressure() / 1e6, 4));
            table.cell("pressure_kind", "absolute");
            table.cell("length [mm]", length(point.length(), random));
            double time = point.length() / rate + instruments.timer() * random.nextGaussian();
            String seconds = FixedNumber.decimals(time, 2);
            table.cell(
                    "burn_time [s]",
                    instruments.stated() && instruments.timer() > 0
                            ? seconds + " ± " + FixedNumber.digits(instruments.timer(), 2)
                            : seconds);
            temperature(table, point.temperature());
            table.cell("note", point.note().orElse(""));
        }
        return table;
    }

    CsvText strands(Map<Scenario.PlannedStrand, Vessel> strands) {
        CsvText table = new CsvText(List.of("strand", "formulation", "batch", "trace"));
        strands.forEach((strand, vessel) -> {
            Randomness random = Randomness.of(scenario.seed(), "calipers " + strand.id());
            table.row();
            table.cell("strand", strand.id());
            table.cell("formulation", strand.propellant().id());
            strand.propellant().batch().ifPresent(batch -> table.cell("batch", batch));
            table.cell("trace", "traces/" + strand.id() + ".csv");
            table.cell("length [mm]", length(strand.length(), random));
            Unit unit = scenario.logger().timeUnit();
            int decimals = FixedNumber.decimalsFor(unit, 1e-3);
            table.cell(
                    "wire_times [" + unit.symbol() + "]",
                    String.join(
                            "; ",
                            vessel.wireTimes().stream()
                                    .map(time -> FixedNumber.decimals(unit.fromSi(time), decimals))
                                    .toList()));
            temperature(table, strand.temperature());
            table.cell("note", strand.note().orElse(""));
        });
        return table;
    }

    private static void temperature(CsvText table, OptionalDouble kelvin) {
        kelvin.ifPresent(value -> table.cell(
                "temperature [" + Unit.DEGREE_CELSIUS.symbol() + "]",
                FixedNumber.decimals(Unit.DEGREE_CELSIUS.fromSi(value), 1)));
    }
}
