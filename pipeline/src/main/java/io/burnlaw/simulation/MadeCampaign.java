package io.burnlaw.simulation;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.quantity.Unit;
import io.burnlaw.simulation.CsvText.FixedNumber;
import io.burnlaw.simulation.TruthText.YamlText;
import io.burnlaw.trace.Trace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A whole campaign folder in memory: the same scenario gives the same bytes.
 *
 * @param files path below the folder, with {@code /}, to its bytes; in the order in which they are written
 */
public record MadeCampaign(Map<String, byte[]> files) {

    public MadeCampaign {
        files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
    }

    /** Fires everything that a scenario plans, and measures it. */
    public static MadeCampaign of(Scenario scenario) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        Measurement measurement = new Measurement(scenario);
        TraceFile traceFile = new TraceFile(scenario);
        List<TrueFiring> firings = new ArrayList<>();
        Map<String, String> traces = new LinkedHashMap<>();
        for (Scenario.PlannedFiring plan : scenario.firings()) {
            TrueFiring firing = TrueFiring.of(scenario, plan);
            firings.add(firing);
            if (plan.timed().isEmpty()) {
                traces.put("traces/" + plan.id() + ".csv", traceFile.text(measurement.measured(firing)));
            }
        }
        Map<Scenario.PlannedStrand, Vessel> strands = new LinkedHashMap<>();
        for (Scenario.PlannedStrand strand : scenario.strands()) {
            Vessel vessel = Vessel.of(scenario, strand);
            strands.put(strand, vessel);
            traces.put("traces/" + strand.id() + ".csv", traceFile.text(measurement.measured(vessel.trace())));
        }
        CampaignTables tables = new CampaignTables(scenario);
        put(files, "campaign.yaml", CampaignText.of(scenario));
        CsvText log = tables.firings(firings);
        CsvText points = tables.points();
        CsvText vessels = tables.strands(strands);
        putUnlessEmpty(files, "firings.csv", log);
        putUnlessEmpty(files, "points.csv", points);
        putUnlessEmpty(files, "strands.csv", vessels);
        for (Scenario.PlannedFiring plan : scenario.firings()) {
            plan.grain()
                    .tableName()
                    .ifPresent(path -> put(
                            files, path, CampaignTables.surface(plan.grain()).text()));
        }
        traces.forEach((path, text) -> put(files, path, text));
        put(files, "truth.yaml", TruthText.of(scenario, firings, strands));
        return new MadeCampaign(files);
    }

    /**
     * Writes the campaign.
     *
     * @param folder made if it is not there; files of the same names are overwritten
     * @throws IOException if it cannot be written
     */
    public void writeTo(Path folder) throws IOException {
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path path = folder.resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.write(path, file.getValue());
        }
    }

    private static void putUnlessEmpty(Map<String, byte[]> files, String path, CsvText table) {
        if (!table.isEmpty()) {
            put(files, path, table.text());
        }
    }

    private static void put(Map<String, byte[]> files, String path, String text) {
        files.put(path, text.getBytes(StandardCharsets.UTF_8));
    }

    /** The campaign.yaml of an invented campaign: what its makers would know, not what is true. */
    private static final class CampaignText {

        private CampaignText() {}

        static String of(Scenario scenario) {
            YamlText yaml = new YamlText();
            yaml.plain("format", "burnlaw-campaign/1");
            yaml.quoted("title", scenario.title());
            scenario.note().ifPresent(note -> yaml.quoted("note", note));
            scenario.preparedBy().ifPresent(name -> yaml.quoted("prepared_by", name));
            scenario.licence().ifPresent(licence -> yaml.plain("licence", licence));
            yaml.plain("ambient_pressure", FixedNumber.decimals(scenario.ambientPressure() / 1e3, 2) + " kPa");
            scenario.referenceTemperature()
                    .ifPresent(kelvin -> yaml.plain(
                            "reference_temperature",
                            FixedNumber.decimals(Unit.DEGREE_CELSIUS.fromSi(kelvin), 1) + " degC"));
            yaml.open("formulations");
            scenario.propellants().forEach(propellant -> formulation(yaml, scenario, propellant));
            yaml.close();
            yaml.open("trace");
            yaml.plain("pressure_kind", scenario.logger().pressureKind().name().toLowerCase(Locale.ROOT));
            scenario.logger().sensorClass().ifPresent(text -> yaml.plain("pressure_uncertainty", text));
            yaml.close();
            hardware(yaml, scenario.hardware());
            return yaml.text();
        }

        private static void formulation(YamlText yaml, Scenario scenario, Scenario.Propellant propellant) {
            double std = scenario.instruments().density();
            double measured = propellant.density()
                    + std
                            * Randomness.of(scenario.seed(), "density " + propellant.id())
                                    .nextGaussian();
            String density = FixedNumber.decimals(measured / 1e3, 3)
                    + (std > 0 ? " ± " + FixedNumber.digits(std / 1e3, 2) : "")
                    + " g/cm3";
            yaml.open(propellant.id());
            yaml.quoted("title", propellant.title());
            yaml.plain("density", density);
            if (propellant.baseline()) {
                yaml.plain("baseline", "true");
            }
            propellant.compareWith().ifPresent(other -> yaml.plain("compare_with", other));
            propellant.additive().ifPresent(name -> yaml.quoted("additive", name));
            propellant
                    .additiveFraction()
                    .ifPresent(share -> yaml.plain("additive_fraction", FixedNumber.digits(100 * share, 4) + " %"));
            yaml.plain("specific_heat_ratio", FixedNumber.digits(propellant.specificHeatRatio(), 5));
            propellant
                    .expectedCharacteristicVelocity()
                    .ifPresent(velocity ->
                            yaml.plain("characteristic_velocity", FixedNumber.digits(velocity, 4) + " m/s"));
            yaml.close();
        }

        private static void hardware(YamlText yaml, Scenario.MotorCase hardware) {
            if (hardware.pressureLimit().isEmpty() && hardware.safetyFactor().isEmpty()) {
                return;
            }
            yaml.open("hardware");
            hardware.pressureLimit()
                    .ifPresent(limit -> yaml.plain("case_pressure_limit", FixedNumber.digits(limit / 1e6, 4) + " MPa"));
            hardware.safetyFactor().ifPresent(factor -> yaml.plain("safety_factor", FixedNumber.digits(factor, 4)));
            yaml.close();
        }
    }

    /** A record as a logger's file. */
    private static final class TraceFile {

        /** Last digit of a pressure [Pa] and of a thrust [N]: below the noise of any sensor here. */
        private static final double PRESSURE_STEP = 100;

        private static final double THRUST_STEP = 0.01;

        private final Scenario scenario;

        TraceFile(Scenario scenario) {
            this.scenario = scenario;
        }

        String text(Trace trace) {
            Scenario.Logger logger = scenario.logger();
            String field = logger.semicolons() ? ";" : ",";
            StringBuilder text = new StringBuilder();
            if (logger.preamble()) {
                text.append("# invented record, see truth.yaml\n")
                        .append("# record ")
                        .append(trace.firing())
                        .append(", ")
                        .append(trace.size())
                        .append(" samples\n");
            }
            text.append(heading("time", logger.timeUnit()));
            if (trace.hasPressure()) {
                text.append(field).append(heading("pressure", logger.pressureUnit()));
            }
            if (trace.hasThrust()) {
                text.append(field).append(heading("thrust", logger.thrustUnit()));
            }
            text.append('\n');
            double zero = logger.pressureKind() == PressureKind.GAUGE ? scenario.ambientPressure() : 0;
            int ofTime = timeDecimals(trace, logger.timeUnit());
            int ofPressure = FixedNumber.decimalsFor(logger.pressureUnit(), PRESSURE_STEP);
            int ofThrust = FixedNumber.decimalsFor(logger.thrustUnit(), THRUST_STEP);
            for (int i = 0; i < trace.size(); i++) {
                text.append(number(logger.timeUnit().fromSi(trace.time(i)), ofTime));
                if (trace.hasPressure()) {
                    text.append(field)
                            .append(number(logger.pressureUnit().fromSi(trace.pressure(i) - zero), ofPressure));
                }
                if (trace.hasThrust()) {
                    text.append(field).append(number(logger.thrustUnit().fromSi(trace.thrust(i)), ofThrust));
                }
                text.append('\n');
            }
            return text.toString();
        }

        private static String heading(String name, Unit unit) {
            return name + " [" + unit.symbol() + "]";
        }

        /** A hundredth of the shortest interval, so that uneven stamps survive; whole microseconds at most. */
        private static int timeDecimals(Trace trace, Unit unit) {
            double shortest = Double.POSITIVE_INFINITY;
            boolean even = true;
            for (int i = 1; i < trace.size(); i++) {
                double step = trace.time(i) - trace.time(i - 1);
                shortest = step > 0 ? Math.min(shortest, step) : shortest;
                even &= Math.abs(trace.time(i) / 1e-4 - Math.rint(trace.time(i) / 1e-4)) < 1e-6;
            }
            return FixedNumber.decimalsFor(unit, even ? 1e-4 : Math.max(1e-6, shortest / 100));
        }

        private String number(double value, int decimals) {
            String text = FixedNumber.decimals(value, decimals);
            return scenario.logger().semicolons() ? text.replace('.', ',') : text;
        }
    }
}
