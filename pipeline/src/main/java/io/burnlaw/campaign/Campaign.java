package io.burnlaw.campaign;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was made and how it was measured: a campaign folder, read and in SI.
 *
 * @param folder               where it lies
 * @param title                what people read
 * @param preparedBy           who made it
 * @param licence              SPDX identifier of the data's licence
 * @param note                 the campaign's remark, shown on the report
 * @param ambientPressure      [Pa, absolute]
 * @param ambientAssumed       whether nobody stated it
 * @param referenceTemperature to which rates are referred [K]
 * @param formulations         at least one, in the order of the file
 * @param hardware             what the case can stand, where stated
 * @param reduction            how firings are reduced
 * @param fit                  how laws are fitted
 * @param firings              rows that can be reduced, in the order of the log
 * @param points               points measured directly
 * @param strands              strands with a record
 * @param batches              the casting that a firing, point or strand came from, by its id; where the tables say
 * @param unusableRows         rows that cannot be used
 * @param inputs               files read so far (traces are added as they are read)
 * @param notes                what was guessed or assumed while reading, as sentences
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
}
