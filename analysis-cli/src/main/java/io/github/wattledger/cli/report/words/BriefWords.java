package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A review in so few words that it fits a message: which ride, the verdict with its minutes, the dearest mistakes, the caps for
 * next time, and what is not known.
 *
 * @param ride which ride it was
 * @param verdict the verdict and what all mistakes cost, or why there is none
 * @param because what the verdict rests on; of a ride that was not judged, how hard it was; possibly empty
 * @param bunch what came of staying with a bunch, or that there probably was one, the weightiest sentence first; possibly
 *     nothing
 * @param recalled what had been agreed before this race, and how it was opened; of a ride that was not judged, that what the
 *     rider says of a bunch changes nothing; possibly empty
 * @param mistakesHeading what stands over the mistakes; empty without any
 * @param mistakes the dearest mistakes, the dearest first
 * @param furtherMistakes how many less dear ones there are
 * @param nextTimeHeading what stands over the caps and the rest of what to do next time
 * @param caps what not to exceed next time, possibly nothing
 * @param nextTime what else to do next time, possibly nothing
 * @param notKnown what is not known
 */
public record BriefWords(
        String ride,
        String verdict,
        String because,
        List<String> bunch,
        String recalled,
        String mistakesHeading,
        List<String> mistakes,
        int furtherMistakes,
        String nextTimeHeading,
        List<String> caps,
        List<String> nextTime,
        String notKnown) {
    private static final String NEXT_TIME = "Next time:";
    private static final String WITH_CAPS = "Next time (averages):";
    private static final String WITH_HEART_RATE = "Next time (averages; watts or bpm, whichever comes first):";

    private static final int MOST_MISTAKES = 3;
    private static final int MOST_LETTERS_OF_A_NAME = 30;
    private static final int MOST_NEXT_TIME = 2;

    /** Copies the lists. */
    public BriefWords {
        bunch = List.copyOf(bunch);
        mistakes = List.copyOf(mistakes);
        caps = List.copyOf(caps);
        nextTime = List.copyOf(nextTime);
    }

    /** A review in a few words. */
    public static BriefWords of(RideReview review, Units units) {
        PacingReview pacing = review.pacing();
        boolean isJudged = pacing.verdict() != Verdict.NOT_JUDGED;
        List<Finding> dearest = DearestMistakes.of(pacing);
        List<String> all = new ArrayList<>();
        dearest.forEach(finding -> all.add(mistake(finding, review, units)));
        if (!isJudged) {
            pacing.remarks().forEach(remark -> all.add(RemarkWords.brief(remark, units)));
        }
        List<String> mistakes = all.subList(0, Math.min(MOST_MISTAKES, all.size()));
        List<String> nextTime = NextTimeWords.others(review);
        return new BriefWords(
                ride(review, units),
                isJudged ? VerdictSentence.withMinutes(review) : OccasionWords.of(review),
                isJudged ? VerdictSentence.because(review) : hardness(review),
                bunch(pacing),
                recalled(review),
                mistakes.isEmpty()
                        ? ""
                        : heading(isJudged, dearest.subList(0, Math.min(MOST_MISTAKES, dearest.size()))),
                mistakes,
                all.size() - mistakes.size(),
                nextTimeHeading(pacing),
                NextTimeWords.caps(pacing),
                nextTime.subList(0, Math.min(MOST_NEXT_TIME, nextTime.size())),
                UnknownWords.of(review));
    }

    /** What had been agreed before a race; of a ride that was not judged, that a told bunch changes nothing; possibly empty. */
    private static String recalled(RideReview review) {
        PacingReview pacing = review.pacing();
        boolean isJudged = pacing.verdict() != Verdict.NOT_JUDGED;
        return Objects.requireNonNullElse(isJudged ? NotesWords.recalled(review) : pacing.bunchChangesNothing(), "");
    }

    /** What the first lines say besides the verdict and what it rests on: of a bunch, and of what had been agreed. */
    static List<String> besides(RideReview review) {
        List<String> besides = new ArrayList<>(bunch(review.pacing()));
        String recalled = recalled(review);
        if (!recalled.isEmpty()) {
            besides.add(recalled);
        }
        return besides;
    }

    private static List<String> bunch(PacingReview pacing) {
        String proposed = ProposedBunchWords.brief(pacing);
        return proposed.isEmpty() ? BunchWords.brief(pacing) : List.of(proposed);
    }

    private static String nextTimeHeading(PacingReview pacing) {
        if (NextTimeWords.caps(pacing).isEmpty()) {
            return NEXT_TIME;
        }
        return NextTimeWords.anyHeartRate(pacing) ? WITH_HEART_RATE : WITH_CAPS;
    }

    private static String ride(RideReview review, Units units) {
        RideLoad load = review.load();
        Double metres = load.distanceM();
        return RideWords.title(review, MOST_LETTERS_OF_A_NAME) + ", "
                + RideWords.start(review.source(), review.quality())
                + ", "
                + (metres == null ? "" : units.distanceWords(metres) + " in ")
                + Figures.clock(load.elapsedSeconds()) + ".";
    }

    private static String heading(boolean isJudged, List<Finding> dearest) {
        if (!isJudged) {
            return "Parts compared:";
        }
        boolean isReplayed = dearest.stream().anyMatch(PriceWords::hasNamedEnds);
        boolean isPriced = dearest.stream().anyMatch(finding -> DearestMistakes.highMinutes(finding) > 0);
        return isReplayed
                ? "Dearest, for the same energy / the same effort:"
                : isPriced ? "Dearest:" : "Weightiest, without a price in minutes:";
    }

    private static String mistake(Finding finding, RideReview review, Units units) {
        String where = finding.startM() == null
                ? finding.when().toString()
                : FindingWords.where(finding.startM(), finding.endM(), review, units);
        String price = finding.cost() instanceof Cost.Priced priced && priced.highMinutes() > 0
                ? " " + PriceWords.brief(priced.lowMinutes(), priced.highMinutes(), PriceWords.lowEnd(finding))
                : "";
        return FindingWords.name(finding.kind()) + price + ", " + where;
    }

    /** How hard a ride was that is not judged; empty where nothing of it is known. */
    private static String hardness(RideReview review) {
        RideLoad load = review.load();
        List<String> parts = new ArrayList<>();
        add(parts, "normalized power ", load.normalizedPowerW(), " W");
        if (LoadWords.doubt(review) == null) {
            add(parts, "training stress ", load.trainingStress(), "");
        }
        add(parts, "average heart rate ", load.averageHeartRateBpm(), " bpm");
        return parts.isEmpty() ? "" : PlainText.capital(String.join(", ", parts)) + ".";
    }

    private static void add(List<String> parts, String before, @Nullable Double value, String unit) {
        if (value != null) {
            parts.add(before + Figures.decimal(value, 0) + unit);
        }
    }
}
