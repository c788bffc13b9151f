package io.burnlaw.campaign.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Firing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Logs with the headings that people write. */
class OtherHeadingsTest {

    @TempDir
    private Path folder;

    private Campaign read(String log) throws IOException {
        Files.writeString(folder.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: Invented
                ambient_pressure: 100 kPa
                formulations:
                  a: {title: Invented}
                """);
        Files.writeString(folder.resolve("firings.csv"), log);
        return CampaignReader.read(folder).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Throat dia (mm) | throat",
                "Throat Ø [mm] | throat",
                "d_throat [mm] | throat",
                "Dt [mm] | throat",
                "Nozzle throat (mm) | throat",
                "exit dia [mm] | exit",
                "Exit Ø (mm) | exit",
                "De [mm] | exit"
            })
    void aDiameterIsFoundByWhatPeopleCallIt(String heading, String which) throws IOException {
        String throat = which.equals("throat") ? heading : "throat_diameter [mm]";
        String exit = which.equals("exit") ? heading : "exit_diameter [mm]";
        Campaign campaign =
                read("firing,formulation,burn_time [s],grain,OD (mm),Core [mm],Length per segment [mm],No. of"
                        + " segments," + throat + "," + exit + ",Propellant [g]\n"
                        + "F1,a,3.1,Bates grain,48,20,70,2,9.5,19,374\n");
        assertThat(campaign.unusableRows()).isEmpty();
        Firing firing = campaign.firings().get(0);
        assertThat(firing.throatDiameter().value()).isCloseTo(9.5e-3, within(1e-12));
        assertThat(firing.exitDiameter().orElseThrow().value()).isCloseTo(19e-3, within(1e-12));
        assertThat(firing.propellantMass().orElseThrow().value()).isCloseTo(0.374, within(1e-12));
        assertThat(firing.grain().segments()).isEqualTo(2);
        assertThat(firing.grain().dimensions().get("outer_diameter").value()).isCloseTo(48e-3, within(1e-12));
        assertThat(campaign.notes())
                .anyMatch(note -> note.contains(heading) && note.contains(which + "_diameter"))
                .anyMatch(note -> note.contains("OD (mm)") && note.contains("outer_diameter"));
    }

    @Test
    void aSecondRowMayHoldTheUnits() throws IOException {
        Campaign campaign = read("""
                firing,formulation,burn_time,grain,OD,Core,segment_length,segments,throat
                ,,s,,in,in,in,,mm
                F1,a,3.1,bates,1 1/2,5/8,~3,2,"9.5"
                """);
        Firing firing = campaign.firings().get(0);
        assertThat(firing.grain().dimensions().get("outer_diameter").value()).isCloseTo(38.1e-3, within(1e-12));
        assertThat(firing.grain().dimensions().get("core_diameter").value()).isCloseTo(15.875e-3, within(1e-12));
        assertThat(firing.grain().dimensions().get("segment_length").value()).isCloseTo(76.2e-3, within(1e-12));
        assertThat(firing.throatDiameter().value()).isCloseTo(9.5e-3, within(1e-12));
        assertThat(campaign.notes()).anyMatch(note -> note.contains("line 2 contains the units"));
    }

    @Test
    void aWordThatMeansAQuantityOnlyWithAUnitIsNoneWithoutIt() throws IOException {
        // 'Propellant' without a unit names the propellant, which the log says by its own column already.
        Campaign campaign = read("""
                firing,formulation,Propellant,burn_time [s],grain,outer_diameter [mm],core_diameter [mm],segment_length [mm],throat_diameter [mm]
                F1,a,date sugar,3.1,bates,48,20,70,9.5
                """);
        assertThat(campaign.firings().get(0).propellantMass()).isEmpty();
        assertThat(campaign.notes()).anyMatch(note -> note.contains("'Propellant' is not known"));
    }
}
