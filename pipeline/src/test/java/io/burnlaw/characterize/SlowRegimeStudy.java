package io.burnlaw.characterize;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

class SlowRegimeStudy {

    private static final double SLOW = 1.25;
    private static final double THRESHOLD = 0.6e6;

    static double rate(double pressure) {
        return 1e-3 * (pressure < THRESHOLD ? SLOW : 4 * SLOW) * StrictMath.pow(pressure / 1e6, 0.36);
    }

    static String scenario(int campaign) {
        SplittableRandom random = new SplittableRandom(9_100 + campaign);
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, """
                format: burnlaw-scenario/1
                title: Slow regime and late ignition, invented
                seed: %d
                ambient_pressure: 101 kPa absolute
                formulations:
                  p:
                    title: Invented
                    density: 1.79 g/cm3
                    characteristic_velocity: 890 m/s
                    expected_characteristic_velocity: 900 m/s
                    specific_heat_ratio: 1.13
                    rate_scatter: 1 %%
                    velocity_scatter: 0.5 %%
                    law:
                      slow: {rate: 1.25 mm/s, at: 1 MPa, exponent: 0.36}
                      fast: {from: 0.6 MPa, rate: 5 mm/s, at: 1 MPa, exponent: 0.36}
                grain: {kind: bates, segments: 2, outer_diameter: 48 mm, core_diameter: 20 mm, segment_length: 70 mm}
                instruments: {caliper: 0.02 mm, scale: 0.2 g, density: 0.01 g/cm3, core_offset: 0.1 mm}
                logger: {sample_interval: 4 ms, noise: 3 kPa, gain_error: 0.3 %%, sensor_class: 0.5 %% of 7 MPa, longest: 90 s}
                firings:
                """, campaign));
        double[] fast = {7.8, 9.0, 10.3, 11.6, 12.6};
        double[] slow = {7.6, 8.6, 9.8, 11};
        double[] late = {8.2, 9.1, 10.0, 11.1};
        for (int i = 0; i < 5; i++) {
            text.append(
                    String.format(Locale.ROOT, "  F%d: {formulation: p, throat: %.2f mm, igniter: 30}%n", i, fast[i]));
        }
        for (int i = 0; i < 4; i++) {
            text.append(String.format(Locale.ROOT, "  S%d: {formulation: p, throat: %.2f mm}%n", i, slow[i]));
        }
        for (int i = 0; i < 4; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "  L%d: {formulation: p, throat: %.2f mm, igniter: %.1f, faults: {late_rise: %.2f s, late_rise_share: %.3f}}%n",
                    i,
                    late[i],
                    6 + 10 * random.nextDouble(),
                    1 + 5 * random.nextDouble(),
                    0.02 + 0.55 * random.nextDouble()));
        }
        return text.toString();
    }

    static Map<String, Double> truth(String yaml, String id) {
        Map<String, Double> values = new HashMap<>();
        boolean inside = false;
        for (String line : yaml.split("\n")) {
            if (line.matches("  \\S.*:.*") || line.matches("\\S.*")) {
                inside = line.trim().startsWith(id + ":");
            }
            if (inside) {
                java.util.regex.Matcher found =
                        java.util.regex.Pattern.compile("(\\w+): ([-0-9.e]+)").matcher(line);
                while (found.find()) {
                    values.put(found.group(1), Double.parseDouble(found.group(2)));
                }
            }
        }
        return values;
    }
}
