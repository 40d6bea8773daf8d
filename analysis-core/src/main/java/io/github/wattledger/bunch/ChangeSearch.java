package io.github.wattledger.bunch;

import io.github.wattledger.bunch.BunchProposal.Showing;
import io.github.wattledger.bunch.BunchProposal.Stretch;
import io.github.wattledger.bunch.RoadPieces.Span;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The search for stretches with less drag than the rest of a ride explains. Rolling resistance is the same throughout a
 * ride: speed answers to every gust and every bad road, so that a stretch's own slope of force on speed does not tell
 * shelter from surface. That the road may have been smoother goes into the range of the saving instead.
 *
 * <p>The limits were set on simulated races, see docs/methods.md.
 */
final class ChangeSearch {
    private static final int SHORTEST_SECONDS = 12 * 60;
    private static final double LEAST_STANDARD_ERRORS = 4.3;

    /** Nine times in ten a normal error lies within so many standard errors. */
    private static final double WITHIN_ERRORS = 1.64;

    /** Nine times in ten a normal error is not lower than so many standard errors. */
    private static final double NOT_BELOW_ERRORS = 1.28;

    /** A bunch that saves less than this, surely, is not worth a word. */
    private static final double LEAST_SURE_SAVING = 0.05;

    /** What shows over more of a ride than this is no change within it. Own choice. */
    private static final double MOST_OF_RIDE = 0.75;

    /**
     * A stretch that seems to save less is more often wind or road than a bunch: close groups save 25 to 50 % by published
     * measurements.
     */
    private static final double LEAST_TOLD_SAVING = 0.25;

    /** From this on the wind explains everything. */
    private static final double MOST_PATCHY_MPS = 1.2;

    private static final double LEAST_USED_M = 40_000;
    private static final double LEAST_USED_SHARE = 0.5;
    private static final double MOST_ERROR = 0.12;
    private static final int USUAL_BUNCH_MINUTES = 45;
    private static final int[] SHOWN_MINUTES = {75, 45, 20};
    private static final double MOST_SHOWN_SAVING = 0.5;

    private final RoadPieces pieces;
    private final Prior prior;
    private final boolean isOneKind;
    private final Scatter scatter;

    /** All stretches that are long enough. */
    private final List<Span> spans;

    private ChangeSearch(RoadPieces pieces, Prior prior, boolean isOneKind) {
        this.pieces = pieces;
        this.prior = prior;
        this.isOneKind = isOneKind;
        this.scatter = new Scatter(pieces, prior, isOneKind);
        this.spans = spans(pieces);
    }

    /**
     * What came of the search.
     *
     * @param stretches what was found, by rising time
     * @param whyNot why nothing can be told, one clause, or null
     * @param wouldHaveShown what would have been found, where nothing was
     */
    record Found(List<Stretch> stretches, @Nullable String whyNot, List<Showing> wouldHaveShown) {
        static Found nothingBecause(String reason) {
            return new Found(List.of(), reason, List.of());
        }
    }

    static Found of(RoadPieces pieces, Prior prior, boolean isOneKind) {
        if (pieces.usedM() < LEAST_USED_M) {
            return Found.nothingBecause("too little of the ride was pedalled steadily over ground that is not steep");
        }
        if (pieces.usedShare() < LEAST_USED_SHARE) {
            return Found.nothingBecause("over half of the ride was coasted, braked or steep");
        }
        return new ChangeSearch(pieces, prior, isOneKind).found();
    }

    private Found found() {
        DragModel alone = new DragModel(pieces, prior, List.of());
        StretchSearch search = search(alone);
        StretchSearch.Found first = next(search, alone).orElse(null);
        if (isNearlyAll(search, first)) {
            return Found.nothingBecause("nearly all of the ride met less air than the drag area asks for, and a wrong"
                    + " drag area, mass or power would look the same");
        }
        DragFit fit = first == null ? search.without() : withSecond(first.fit());
        if (fit.patchyMps() >= MOST_PATCHY_MPS) {
            return Found.nothingBecause(
                    "power and speed scatter too much, through restless air or a bunch that came and went");
        }
        List<Stretch> stretches = told(fit);
        if (!stretches.isEmpty()) {
            return new Found(stretches, null, List.of());
        }
        StretchGains gains = new StretchGains(fit);
        List<Showing> wouldHaveShown = wouldHaveShown(gains);
        return error(gains, USUAL_BUNCH_MINUTES) > MOST_ERROR || wouldHaveShown.isEmpty()
                ? Found.nothingBecause("wind, road and bunch cannot be kept apart on this ride")
                : new Found(List.of(), null, wouldHaveShown);
    }

    private StretchSearch search(DragModel model) {
        return new StretchSearch(scatter, DragFit.each(model, scatter));
    }

    /** The ride with a second bunch, too, where one shows. */
    private DragFit withSecond(DragFit first) {
        return next(search(first.model()), first.model())
                .map(StretchSearch.Found::fit)
                .orElse(first);
    }

    /** The next bunch that shows, and is not nearly all of the ride. */
    private Optional<StretchSearch.Found> next(StretchSearch search, DragModel model) {
        List<Span> free = spans.stream()
                .filter(span -> !isNearlyAll(span))
                .filter(span -> model.bunches().stream().noneMatch(other -> overlap(span, other)))
                .toList();
        return search.likeliest(free).filter(found -> found.standardErrors() >= LEAST_STANDARD_ERRORS);
    }

    /** Whether a bunch over nearly all of the ride explains it, and better than the first stretch that was found. */
    private boolean isNearlyAll(StretchSearch search, StretchSearch.@Nullable Found first) {
        return search.likeliest(spans.stream().filter(this::isNearlyAll).toList())
                .filter(found -> first == null
                        ? found.standardErrorsInMean() >= LEAST_STANDARD_ERRORS
                        : found.gain() > first.gain())
                .isPresent();
    }

    private boolean isNearlyAll(Span span) {
        Span all = new Span(0, pieces.count());
        return pieces.when(span).seconds() > MOST_OF_RIDE * pieces.when(all).seconds();
    }

    private static List<Span> spans(RoadPieces pieces) {
        List<Span> spans = new ArrayList<>();
        for (int from = 0; from < pieces.count(); from++) {
            for (int to = from + 1; to <= pieces.count(); to++) {
                Span span = new Span(from, to);
                if (pieces.when(span).seconds() >= SHORTEST_SECONDS) {
                    spans.add(span);
                }
            }
        }
        return spans;
    }

    private static boolean overlap(Span one, Span other) {
        return one.from() < other.to() && other.from() < one.to();
    }

    private List<Stretch> told(DragFit fit) {
        List<Stretch> told = new ArrayList<>();
        List<Span> bunches = fit.model().bunches();
        for (int k = 0; k < bunches.size(); k++) {
            Span span = bunches.get(k);
            double saving = fit.number(DragModel.FIRST_SAVING + k);
            double area = fit.number(DragModel.AREA);
            double error = Math.hypot(fit.error(DragModel.FIRST_SAVING + k), smootherRoad(span, area));
            double low = saving - WITHIN_ERRORS * error;
            if (saving >= LEAST_TOLD_SAVING && low > LEAST_SURE_SAVING) {
                told.add(new Stretch(pieces.when(span), saving, low, saving + WITHIN_ERRORS * error));
            }
        }
        told.sort(Comparator.comparingInt(stretch -> stretch.when().fromSecond()));
        return told;
    }

    /** The standard error of a saving through a road that rolls otherwise within the stretch than elsewhere. */
    private double smootherRoad(Span span, double areaM2) {
        return Scatter.rollingError(isOneKind) * prior.perRolling() / (areaM2 * pieces.meanSquare(span));
    }

    /** The stretch of some minutes from the start on; empty where the ride is not so much longer. */
    private Optional<Span> fromStart(int minutes) {
        return spans.stream()
                .filter(span -> span.from() == 0 && !isNearlyAll(span))
                .filter(span -> pieces.when(span).seconds() >= 60 * minutes)
                .findFirst();
    }

    private double error(StretchGains gains, int minutes) {
        return fromStart(minutes)
                .map(span -> Math.hypot(gains.error(span), smootherRoad(span, prior.areaM2())))
                .orElse(Double.POSITIVE_INFINITY);
    }

    private List<Showing> wouldHaveShown(StretchGains gains) {
        List<Showing> shown = new ArrayList<>();
        for (int minutes : SHOWN_MINUTES) {
            fromStart(minutes).ifPresent(span -> {
                double error = gains.error(span);
                double errorOfRange = Math.hypot(error, smootherRoad(span, prior.areaM2()));
                double enough = Math.max(
                        Math.max(
                                (LEAST_STANDARD_ERRORS + NOT_BELOW_ERRORS) * error,
                                LEAST_TOLD_SAVING + NOT_BELOW_ERRORS * error),
                        LEAST_SURE_SAVING + (WITHIN_ERRORS + NOT_BELOW_ERRORS) * errorOfRange);
                if (enough <= MOST_SHOWN_SAVING) {
                    shown.add(new Showing(minutes, enough));
                }
            });
        }
        return shown;
    }
}
