package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.Strand;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.reduction.PressureFromThrust;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Reads and reduces every record of a campaign, without fitting a law. */
public final class CampaignCheck {

    /** The courses of the burns are not wanted. */
    private static final NumberStore NOWHERE = numbers -> () -> new double[0];

    /** What a slip in the log looks like: it is mended before a run, so it is said before one. */
    private static final Set<FindingCode> OF_THE_LOG = EnumSet.of(
            FindingCode.GRAIN_MASS,
            FindingCode.RECORD_AGAINST_GRAIN,
            FindingCode.IMPLAUSIBLE_CSTAR,
            FindingCode.IMPLAUSIBLE_BURN_TIME,
            FindingCode.CHAMBER_VOLUME);

    private CampaignCheck() {}

    /**
     * Result of reading the record of one row.
     *
     * @param id       of the firing or strand
     * @param trace    path of its record, or {@code timed} where the burn was only timed
     * @param findings what was seen of the row and the file
     * @param notes    what was guessed, as sentences
     * @param problem  why the file cannot be read, as for a terminal; one of the findings says the same
     */
    public record RowCheck(
            String id, String trace, List<Finding> findings, List<String> notes, Optional<Problem> problem) {
        public RowCheck {
            findings = List.copyOf(findings);
            notes = List.copyOf(notes);
        }

        RowCheck(String id, String trace, List<Finding> findings, List<String> notes) {
            this(id, trace, findings, notes, Optional.empty());
        }

        /** {@return whether the log itself says that the row is not to be used} */
        public boolean setAside() {
            return findings.stream().anyMatch(finding -> finding.code() == FindingCode.SET_ASIDE);
        }

        /** {@return whether the row was meant to be used and gives no rate as it is} */
        public boolean rejected() {
            return !setAside() && findings.stream().anyMatch(finding -> finding.severity() == Severity.REJECTION);
        }
    }

    /** A row with what the rows after it need to know of it. */
    private record Checked(RowCheck row, Optional<InputFile> input, Optional<Reduction.Reduced> reduced) {

        Checked(RowCheck row) {
            this(row, Optional.empty(), Optional.empty());
        }

        Checked with(Finding more) {
            return new Checked(
                    new RowCheck(
                            row.id,
                            row.trace,
                            Stream.concat(row.findings.stream(), Stream.of(more))
                                    .toList(),
                            row.notes),
                    input,
                    reduced);
        }
    }

    /**
     * Reads and reduces the records of all rows, as a run does.
     *
     * @param progress told of the records that are read
     * @return one a firing, then one a strand, in the order of the logs
     */
    public static List<RowCheck> of(Campaign campaign, Progress progress) {
        return Workers.run(Runtime.getRuntime().availableProcessors(), () -> {
            List<Checked> firings = Workers.map(
                    campaign.firings(),
                    firing -> guarded(firing.id(), () -> firing(campaign, firing)),
                    progress,
                    "firings read");
            List<Checked> strands = Workers.map(
                    campaign.strands(),
                    strand -> guarded(strand.id(), () -> strand(campaign, strand)),
                    progress,
                    "strands read");
            SameRecords records = new SameRecords();
            List<RowCheck> rows = new ArrayList<>();
            for (int i = 0; i < firings.size(); i++) {
                Firing firing = campaign.firings().get(i);
                Checked checked = said(firings.get(i), records);
                rows.add(
                        firing.trace().isPresent() || firing.setAside().isPresent()
                                ? checked.row()
                                : timed(campaign, firing, firings));
            }
            strands.forEach(strand -> rows.add(said(strand, records).row()));
            return rows;
        });
    }

    private static Checked guarded(String id, Supplier<Checked> check) {
        return Guard.around(check, id, fault -> new Checked(new RowCheck(id, id, List.of(fault), List.of())));
    }

    private static Checked said(Checked checked, SameRecords records) {
        return checked.row().rejected()
                ? checked
                : records.seen(checked.row().id(), checked.input())
                        .map(checked::with)
                        .orElse(checked);
    }

    private static Checked firing(Campaign campaign, Firing firing) {
        if (firing.setAside().isPresent()) {
            return aside(
                    firing.id(),
                    firing.trace().orElse("timed"),
                    firing.setAside().get());
        }
        if (firing.trace().isEmpty()) {
            // what the firings with records give is needed for it
            return new Checked(new RowCheck(firing.id(), "timed", List.of(), List.of()));
        }
        List<Finding> findings = new ArrayList<>();
        Optional<Grain> grain = Grains.of(firing.grain()).match(Optional::of, impossible -> {
            findings.add(Finding.of(
                    FindingCode.UNUSABLE_ROW, "the log, line " + firing.row() + ": " + String.join("; ", impossible)));
            return Optional.empty();
        });
        String trace = firing.trace().get();
        TraceReading reading =
                TraceReader.read(campaign.folder(), firing.id(), trace, firing.settings(), firing.ambientPressure());
        reading.<Optional<Finding>>match(
                        read -> read.trace().hasPressure() ? Optional.empty() : PressureFromThrust.exitUnknown(firing),
                        unreadable -> Optional.empty())
                .ifPresent(findings::add);
        Optional<Reduction> reduction = grain.flatMap(built -> reading.match(
                read -> Optional.of(
                        FiringWork.reduction(campaign, firing, built, read).keptIn(NOWHERE)),
                unreadable -> Optional.empty()));
        return row(
                firing.id(),
                trace,
                findings.stream(),
                reading,
                reduction.map(Reduction::findings).orElse(List.of()),
                reduction.flatMap(found -> found.match(Optional::of, rejected -> Optional.<Reduction.Reduced>empty())));
    }

    /** A row without a record, with the c* of those that have one. */
    private static RowCheck timed(Campaign campaign, Firing firing, List<Checked> all) {
        List<Reduction.Reduced> reduced = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (campaign.firings().get(i).formulation().equals(firing.formulation())) {
                all.get(i).reduced().ifPresent(reduced::add);
            }
        }
        List<Finding> findings = FiringWork.of(campaign, firing, PooledVelocity.of(reduced), NOWHERE)
                .reduction()
                .findings();
        return new RowCheck(firing.id(), "timed", told(findings).toList(), List.of());
    }

    private static Checked strand(Campaign campaign, Strand strand) {
        if (strand.setAside().isPresent()) {
            return aside(strand.id(), strand.trace(), strand.setAside().get());
        }
        TraceReading reading = TraceReader.read(
                campaign.folder(), strand.id(), strand.trace(), strand.settings(), strand.ambientPressure());
        List<Finding> reduction = reading.match(
                read -> StrandWork.reduction(strand, StrandWork.formulation(campaign, strand), read)
                        .findings(),
                unreadable -> List.of());
        return row(strand.id(), strand.trace(), Stream.empty(), reading, reduction, Optional.empty());
    }

    /** What is seen in a record, why the same reduction as in a run would reject it, and what speaks against the log. */
    private static Checked row(
            String id,
            String trace,
            Stream<Finding> ofRow,
            TraceReading reading,
            List<Finding> ofReduction,
            Optional<Reduction.Reduced> reduced) {
        Stream<Finding> ofRecord =
                reading.match(read -> read.findings().stream(), unreadable -> unreadable.findings().stream());
        List<Finding> findings = Stream.of(ofRow, ofRecord, told(ofReduction))
                .flatMap(part -> part)
                .distinct()
                .toList();
        return new Checked(
                new RowCheck(
                        id,
                        trace,
                        findings,
                        reading.match(TraceReading.Read::notes, unreadable -> List.of()),
                        reading.match(read -> Optional.empty(), TraceReading.Unreadable::problem)),
                reading.match(read -> Optional.of(read.input()), unreadable -> Optional.empty()),
                reduced);
    }

    private static Stream<Finding> told(List<Finding> findings) {
        return findings.stream()
                .filter(finding -> finding.severity() == Severity.REJECTION || OF_THE_LOG.contains(finding.code()));
    }

    private static Checked aside(String id, String trace, String reason) {
        return new Checked(new RowCheck(id, trace, List.of(Finding.of(FindingCode.SET_ASIDE, reason)), List.of()));
    }

    /**
     * Sees records with the same bytes under two names: such a burn would count twice. Asked row by row, in their
     * order.
     */
    static final class SameRecords {

        private record First(String row, String path) {}

        private final Map<String, First> byChecksum = new HashMap<>();

        /**
         * Looks at one row.
         *
         * @param row   id of the firing or strand
         * @param input its record, where it could be read
         * @return what to say where an earlier row has the same bytes
         */
        Optional<Finding> seen(String row, Optional<InputFile> input) {
            return input.flatMap(record -> Optional.ofNullable(
                            byChecksum.putIfAbsent(record.sha256(), new First(row, record.path())))
                    .map(first -> Finding.of(
                            FindingCode.SAME_RECORD,
                            record.path() + " has the same content as " + first.path() + ", the record of "
                                    + first.row() + ".")));
        }
    }
}
