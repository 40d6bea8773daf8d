package io.github.wattledger.cli;

import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.text.TextBrief;
import io.github.wattledger.cli.report.text.TextExplanation;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.plan.KeptPlan;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.read.UnreadableRideException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** What is written of a review, as options: in which format, how much of it, and against which plan. */
final class ReviewForm {
    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people), json (for programs), csv (the cleaned recording, one row a"
                    + " second, not judged), splits (hours, laps, climbs and sections as CSV) or html (a page with"
                    + " charts, one file).")
    private ReportFormat format = ReportFormat.TEXT;

    @Option(
            names = "--explain",
            paramLabel = "FINDING",
            description =
                    "Instead of the report, show step by step how the numbers of a finding came about, for instance"
                            + " over-hard-start. As text.")
    private @Nullable FindingKind explain;

    @Option(
            names = "--brief",
            description =
                    "Instead of the report, at most 15 lines to send in a message: the verdict, the dearest mistakes,"
                            + " the caps for next time, what is not known. As text.")
    private boolean isBrief;

    @Option(
            names = "--plan",
            paramLabel = "FILE",
            description = "Hold the ride against this plan, a file that 'wattledger plan --format json' wrote: planned"
                    + " and ridden, caps kept or not, an over-hard start by its opening.")
    private @Nullable String planFile;

    /** Whether it is written for people, not for programs. */
    boolean isForPeople() {
        return format.isForPeople();
    }

    /** Whether the judgement of the ride stands in it. */
    boolean isJudged() {
        return format != ReportFormat.CSV;
    }

    /** Whether what was eaten stands in it. */
    boolean showsFood() {
        return explain == null && !isTable();
    }

    private boolean isTable() {
        return format == ReportFormat.CSV || format == ReportFormat.SPLITS;
    }

    /** The plan to hold the ride against; null where none is named. */
    @Nullable KeptPlan plan(@Nullable CommandSpec spec) throws UnreadableRideException {
        return planFile == null ? null : PlanFile.read(Usage.path(spec, "--plan", planFile));
    }

    /**
     * What is written of a ride. The one place where one ride and several are told apart.
     *
     * @param against the ride held against its plan, or null
     */
    Report report(Units units, JudgementLimits limits, @Nullable PlanReview against, boolean areSeveral) {
        if (isBrief || areSeveral) {
            return new TextBrief(units);
        }
        return explain == null ? format.report(units, against) : new TextExplanation(explain, limits, units);
    }

    /** A usage error where these options do not fit one another. */
    void requireWhatFits(@Nullable CommandSpec spec) {
        if (explain != null && format != ReportFormat.TEXT) {
            throw Usage.error(spec, "--explain is written as text only");
        }
        if (isBrief && (explain != null || format != ReportFormat.TEXT)) {
            throw Usage.error(
                    spec,
                    "--brief is written as text only" + (explain == null ? "" : ", and not together with --explain"));
        }
        if (planFile != null && isTable()) {
            throw Usage.error(spec, "--plan is for --format text, json and html");
        }
    }

    /**
     * A usage error where an option is for one ride.
     *
     * @param hasPart whether a part of the ride is asked for
     */
    void requireForSeveral(@Nullable CommandSpec spec, boolean hasPart) {
        if (planFile != null) {
            throw Usage.error(spec, "--plan is for one ride");
        }
        if (hasPart || explain != null) {
            throw Usage.error(spec, "--session, --from, --to, --laps and --explain are for one ride");
        }
        if (format != ReportFormat.TEXT) {
            throw Usage.error(
                    spec,
                    "several rides are written as text only; 'wattledger season' takes them with --format and --pages");
        }
    }
}
