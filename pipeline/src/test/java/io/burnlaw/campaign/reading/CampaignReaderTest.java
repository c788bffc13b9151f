package io.burnlaw.campaign.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.DirectPoint;
import io.burnlaw.campaign.Campaign.FitSettings;
import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.quantity.Measured;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CampaignReaderTest {

    private static final String YAML = """
            format: burnlaw-campaign/1
            title: Invented syrup propellant
            prepared_by: Nobody
            licence: CC-BY-4.0
            note: no
            ambient_pressure: 98.6 kPa
            reference_temperature: 21 degC
            formulations:
              base:
                title: Baseline
                density: 1.79 ± 0.01 g/cm3
                baseline: true
                specific_heat_ratio: 1.14
                characteristic_velocity: 910 ± 10 m/s
              ox1:
                density: 1.80 g/cm3
                compare_with: base
                additive: iron oxide
                additive_fraction: 1 %
            trace:
              time: "time [ms]"
              pressure: "sensor [V]"
              pressure_kind: gauge
              calibration: {0.48 V: 0 psi, 4.52 V: 1000 psi}
              pressure_uncertainty: 0.5 % of 1000 psi
            hardware:
              case_pressure_limit: 5.5 MPa
              safety_factor: 2
            reduction:
              method: thickness-time
              burnout_event: maximum-curvature
              ignition_threshold: 5 %
            fit:
              confidence: 90 %
              seed: 42
              weighting: measured
              pressure_errors: orthogonal-distance
              robust: yes
            """;

    private static final String FIRINGS = """
            # invented
            firing,formulation,trace,grain,segments,outer_diameter [mm],core_diameter [mm],segment_length [mm],throat_diameter [mm],throat_diameter_uncertainty [mm],grain_temperature [degC],ambient_pressure [kPa],pressure_kind,use,note,weather
            1,base,traces/1.csv,bates,2,38 ± 0.05,12.7,60,8,0.02,20,,,yes,"first, of many",fine
            2,ox1,traces\\2.csv,bates,,1.5 in,12.7,60 + 60 + 45,8.2,,,99,absolute,no: cracked grain,,rain
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void traces() throws IOException {
        Files.createDirectory(folder.resolve("traces"));
        Files.writeString(folder.resolve("traces/1.csv"), "x");
        Files.writeString(folder.resolve("traces/2.csv"), "x");
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private Campaign campaign() {
        return CampaignReader.read(folder).orElseThrow();
    }

    private List<Problem> problems() {
        return CampaignReader.read(folder)
                .match(
                        read -> {
                            throw new AssertionError("was read: " + read);
                        },
                        problems -> problems);
    }

    @Test
    void everyKeyOfTheYamlIsRead() throws IOException {
        write("campaign.yaml", YAML);
        write("firings.csv", FIRINGS);
        Campaign campaign = campaign();
        assertThat(campaign.title()).isEqualTo("Invented syrup propellant");
        assertThat(campaign.note()).as("YAML 1.1 would make this false").contains("no");
        assertThat(campaign.ambientPressure()).isEqualTo(98_600);
        assertThat(campaign.ambientAssumed()).isFalse();
        assertThat(campaign.referenceTemperature()).hasValue(294.15);
        assertThat(campaign.formulations()).extracting(Formulation::id).containsExactly("base", "ox1");
        Formulation base = campaign.formulations().get(0);
        assertThat(base.density()).contains(Measured.of(1790, 10));
        assertThat(base.baseline()).isTrue();
        assertThat(base.specificHeatRatio()).hasValue(1.14);
        assertThat(base.characteristicVelocity()).contains(Measured.of(910, 10));
        Formulation other = campaign.formulations().get(1);
        assertThat(other.title()).isEqualTo("ox1");
        assertThat(other.compareWith()).contains("base");
        assertThat(other.additiveFraction()).hasValue(0.01);
        assertThat(campaign.hardware().casePressureLimit()).hasValue(5.5e6);
        assertThat(campaign.hardware().safetyFactor()).isEqualTo(2);
        assertThat(campaign.reduction())
                .isEqualTo(new ReductionSettings(
                        ReductionSettings.Method.THICKNESS_TIME,
                        ReductionSettings.BurnoutEvent.MAXIMUM_CURVATURE,
                        0.05,
                        0.10));
        assertThat(campaign.fit())
                .isEqualTo(new FitSettings(0.90, 42, Weighting.MEASURED, PressureErrors.ORTHOGONAL_DISTANCE, true));
    }

    @Test
    @Oracle("openpyxl 3.1.5 wrote the workbook; see trace/reading/make_records.py")
    void aWorkbookServesAsTheLog() throws IOException {
        write("campaign.yaml", YAML.replace("base:", "p:").replace("compare_with: base", "compare_with: p"));
        try (InputStream in = CampaignReaderTest.class.getResourceAsStream("firings.xlsx")) {
            Files.write(folder.resolve("firings.xlsx"), in.readAllBytes());
        }
        Files.writeString(folder.resolve("traces/A1.csv"), "x");
        Campaign campaign = campaign();
        assertThat(campaign.firings()).extracting(Firing::id).containsExactly("A1", "2");
        Firing first = campaign.firings().get(0);
        assertThat(first.grain().dimensions().get("core_diameter").value()).isEqualTo(14.02e-3);
        assertThat(first.throatDiameter().value()).isEqualTo(9e-3);
        assertThat(first.propellantMass().orElseThrow().value()).isEqualTo(0.1804);
        assertThat(campaign.firings().get(1).throatDiameter().value()).isEqualTo(8.5e-3);
        assertThat(campaign.firings().get(1).setAside()).contains("windy");
    }

    @ParameterizedTest
    @CsvSource({"60;8;0.02, 60;86;0.02, the throat is wider than the grain"})
    void whatCannotBelongToOneMotorIsSaidOfItsRow(String good, String bad, String what) throws IOException {
        write("campaign.yaml", YAML);
        write("firings.csv", FIRINGS.replace(good.replace(';', ','), bad.replace(';', ',')));
        assertThat(campaign().unusableRows())
                .singleElement()
                .satisfies(row ->
                        assertThat(row.problems()).extracting(Problem::what).containsExactly(what));
    }

    /** Two segments of 38 mm by 60 mm displace 136 cm³: 5 g/cm³ would be 680 g. */
    @ParameterizedTest
    @CsvSource({"2188, 1", "0.2188, 0", "680, 0", "681, 1"})
    void aGrainThatCannotWeighThisMuchIsSaidOfItsRow(String mass, int unusable) throws IOException {
        write("campaign.yaml", YAML);
        write(
                "firings.csv",
                FIRINGS.replace("weather", "propellant_mass [g]")
                        .replace(",fine", "," + mass)
                        .replace(",rain", ","));
        assertThat(campaign().unusableRows()).hasSize(unusable);
    }

    @Test
    void everyCellOfTheLogIsRead() throws IOException {
        write("campaign.yaml", YAML);
        write("firings.csv", FIRINGS);
        Campaign campaign = campaign();
        assertThat(campaign.unusableRows()).isEmpty();
        Firing first = campaign.firings().get(0);
        assertThat(first.id()).isEqualTo("1");
        assertThat(first.row()).isEqualTo(3);
        assertThat(first.grain().kind()).isEqualTo("bates");
        assertThat(first.grain().segments()).isEqualTo(2);
        assertThat(first.grain().dimensions().get("outer_diameter").std().orElseThrow())
                .isCloseTo(5e-5, within(1e-18));
        assertThat(first.throatDiameter()).isEqualTo(Measured.of(0.008, 0.02 / 1000));
        assertThat(first.grainTemperature()).hasValue(293.15);
        assertThat(first.ambientPressure()).isEqualTo(98_600);
        assertThat(first.note()).contains("first, of many");
        assertThat(first.setAside()).isEmpty();
        assertThat(first.settings().pressureKind()).contains(PressureKind.GAUGE);
        // 0.5 % of 1000 psi: 5 psi of 6894.757 Pa
        assertThat(first.settings().pressureUncertainty().orElseThrow()).isCloseTo(34_473.786, within(1e-3));
        assertThat(first.settings().calibration())
                .extracting(point -> point.reading().value())
                .containsExactly(0.48, 4.52);
        Firing second = campaign.firings().get(1);
        assertThat(second.trace()).contains("traces/2.csv");
        assertThat(second.grain().segments()).isEqualTo(3);
        assertThat(second.grain().dimensions().get("segment_length_3").value()).isEqualTo(0.045);
        assertThat(second.grain().dimensions().get("outer_diameter").value()).isCloseTo(0.0381, within(1e-16));
        assertThat(second.ambientPressure()).isEqualTo(99_000);
        assertThat(second.settings().pressureKind()).contains(PressureKind.ABSOLUTE);
        assertThat(second.setAside()).contains("cracked grain");
        assertThat(campaign.notes()).anyMatch(note -> note.contains("weather"));
        assertThat(campaign.inputs()).extracting(InputFile::path).containsExactly("campaign.yaml", "firings.csv");
    }

    @Test
    void semicolonsDecimalCommasAndOldEncodingsAreReadWithoutBeingAskedFor() throws IOException {
        write("campaign.yaml", YAML.replace("98.6 kPa", "98,6 kPa").replace("\n", "\r\n"));
        String log = "firing;formulation;trace;grain;outer_diameter [mm];core_diameter [mm];segment_length [mm];"
                + "throat_diameter [mm];grain_temperature [°C]\r\n"
                + "1;base;traces/1.csv;bates;38,1;12,700;60;8,05;20,5\r\n";
        Files.write(folder.resolve("firings.csv"), log.getBytes(Charset.forName("windows-1252")));
        Campaign campaign = campaign();
        assertThat(campaign.ambientPressure()).isEqualTo(98_600);
        Firing firing = campaign.firings().get(0);
        assertThat(firing.grain().dimensions().get("core_diameter").value()).isEqualTo(0.0127);
        assertThat(firing.throatDiameter().value()).isEqualTo(0.00805);
        assertThat(campaign.notes()).anyMatch(note -> note.contains("Windows-1252"));
    }

    @Test
    void tabsAndMarksAreReadToo() throws IOException {
        write("campaign.yaml", "\uFEFF" + YAML);
        write(
                "firings.csv",
                "\uFEFF" + FIRINGS.replace("\"first, of many\"", "first").replace(",", "\t"));
        assertThat(campaign().firings()).hasSize(2);
        Files.write(folder.resolve("firings.csv"), ("\uFEFF" + FIRINGS).getBytes(StandardCharsets.UTF_16LE));
        assertThat(campaign().firings()).hasSize(2);
    }

    @Test
    void pointsAreAbsoluteAndMayBeTimedByHand() throws IOException {
        write("campaign.yaml", YAML);
        write("points.csv", """
                point,formulation,pressure [psig],rate [mm/s],rate_uncertainty [mm/s],length [mm],burn_time [s],use
                s1,base,500,7.1,0.2,,,
                s2,base,0 psig,,,10.0 ± 0.1,55 ± 0.55,
                s3,base,1 MPa(a),5,,,,no
                """);
        Campaign campaign = campaign();
        assertThat(campaign.points()).hasSize(3);
        assertThat(campaign.points().get(0).pressure().value()).isCloseTo(98_600 + 500 * 6894.757293168, within(1e-3));
        assertThat(campaign.points().get(0).rate()).isEqualTo(Measured.of(7.1 / 1000, 0.2 / 1000));
        DirectPoint slow = campaign.points().get(1);
        assertThat(slow.pressure().value()).isEqualTo(98_600);
        assertThat(slow.rate().value()).isCloseTo(0.01 / 55, within(1e-18));
        // 1 % of the length and 1 % of the time in quadrature
        assertThat(slow.rate().std().orElseThrow()).isCloseTo(0.01 / 55 * Math.sqrt(2) / 100, within(1e-12));
        assertThat(campaign.points().get(2).pressure().value()).isEqualTo(1e6);
        assertThat(campaign.points().get(2).setAside()).isPresent();
    }

    @Test
    void strandsAreReadWithTheirWires() throws IOException {
        write("campaign.yaml", YAML);
        write("strands.csv", """
                strand,formulation,trace,length [mm],wire_times [s],temperature [degC]
                a,base,traces/1.csv,50,1.20; 9.45,20
                b,base,traces/2.csv,50,,
                """);
        Campaign campaign = campaign();
        assertThat(campaign.strands().get(0).wireTimes()).containsExactly(1.20, 9.45);
        assertThat(campaign.strands().get(1).wireTimes()).isEmpty();
    }

    @Test
    void aSurfaceTableIsReadBesideTheLog() throws IOException {
        write("campaign.yaml", YAML);
        write("star.csv", "web [mm],area [cm2]\n0,50\n5,60\n10,0\n");
        write("firings.csv", """
                firing,formulation,trace,grain,surface_table,throat_diameter [mm]
                1,base,traces/1.csv,table,star.csv,8
                """);
        GrainDescription grain = campaign().firings().get(0).grain();
        assertThat(grain.surface()).hasSize(3);
        assertThat(grain.surface().get(1).web()).isEqualTo(0.005);
        assertThat(grain.surface().get(1).surface()).isEqualTo(0.006);
        assertThat(grain.tableName()).contains("star.csv");
    }

    @Test
    void theProblemsOfAllFilesAreToldAtOnce() throws IOException {
        write("campaign.yaml", YAML.replace("licence:", "license:").replace("1.79", "0.79 x"));
        write("firings.csv", FIRINGS.replace("throat_diameter [mm]", "throat_diameter [g]"));
        write("points.csv", "point,formulation,pressure\n1,base,7\n");
        assertThat(problems()).extracting(Problem::file).contains("campaign.yaml", "firings.csv", "points.csv");
    }

    @Test
    void oneBadRowNeverSinksTheOthers() throws IOException {
        write("campaign.yaml", YAML);
        write("firings.csv", FIRINGS.replace("12.7,60,8,0.02", "12.7,60,0,0.02"));
        Campaign campaign = campaign();
        assertThat(campaign.firings()).extracting(Firing::id).containsExactly("2");
        assertThat(campaign.unusableRows()).hasSize(1);
        assertThat(campaign.unusableRows().get(0).problems().get(0).text()).isEqualTo("""
                        firings.csv:3: throat_diameter [mm]: the value is not above zero
                            found      0
                            expected   a value above zero
                            mend it    measure it again""");
    }

    @Test
    void theRecordOfARowThatTheLogSetsAsideNeedNotBeThere() throws IOException {
        write("campaign.yaml", YAML);
        write("firings.csv", FIRINGS);
        Files.delete(folder.resolve("traces/2.csv"));
        assertThat(campaign().firings()).hasSize(2);
        assertThat(campaign().unusableRows()).isEmpty();
        Files.delete(folder.resolve("traces/1.csv"));
        assertThat(campaign().unusableRows())
                .singleElement()
                .satisfies(row -> assertThat(row.id()).isEqualTo("1"));
    }

    @ParameterizedTest
    @CsvSource({"1.csv", "TRACES/1.CSV", "1", "traces\\1.csv", "C:\\stand\\day 2\\1.csv", "./traces/1.csv"})
    void aRecordIsFoundAsPeopleNameIt(String written) throws IOException {
        Files.writeString(folder.resolve("campaign.yaml"), YAML);
        Files.writeString(folder.resolve("firings.csv"), FIRINGS.replace("traces/1.csv", written));
        Firing first = campaign().firings().get(0);
        assertThat(Path.of(first.trace().orElseThrow()).normalize()).isEqualTo(Path.of("traces/1.csv"));
    }

    @Test
    void aRecordThatNoRowNamesIsOffered() throws IOException {
        Files.writeString(folder.resolve("campaign.yaml"), YAML);
        Files.writeString(folder.resolve("traces/run-A1.csv"), "x");
        Files.writeString(folder.resolve("firings.csv"), FIRINGS.replace("traces/1.csv", "runA1.csv"));
        assertThat(campaign().unusableRows().get(0).problems().get(0).text())
                .contains("write   traces/run-A1.csv   if that is the record: no other row names it");
    }
}
