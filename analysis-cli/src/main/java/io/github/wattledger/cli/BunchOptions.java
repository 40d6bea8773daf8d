package io.github.wattledger.cli;

import io.github.wattledger.pacing.Company;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.RideNotes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What the rider says of bunches, as options. */
final class BunchOptions {
    @Option(
            names = "--bunch",
            paramLabel = "FROM-TO",
            converter = Stretch.class,
            description = "You rode in a bunch from one elapsed time until you left it at another, for instance"
                    + " 0:12-1:21. The report then says whether staying with it was worth it. Can be given several"
                    + " times.")
    private List<Interval> bunches = new ArrayList<>();

    @Option(names = "--alone", description = "You rode in no bunch at any time; not together with --bunch.")
    private boolean isAlone;

    @Option(
            names = "--next-group",
            paramLabel = "SHARE",
            converter = OptionValues.Share.class,
            description =
                    "Had you let the bunch go, a next group would have sheltered you as well for this share of the"
                            + " way, for instance 50%%. Without it: none would.")
    private @Nullable Double nextGroupShare;

    /** Whether any of the options was given. */
    boolean isGiven() {
        return isAlone || nextGroupShare != null || !bunches.isEmpty();
    }

    /** Whether a next group stands for the bunches of the notes. */
    boolean restsOnNotes() {
        return nextGroupShare != null && bunches.isEmpty();
    }

    /**
     * What was said; a usage error when it contradicts itself.
     *
     * @param notes the notes of the ride, whose bunches a next group may stand for
     */
    Company company(@Nullable CommandSpec spec, RideNotes notes) {
        if (isAlone && !bunches.isEmpty()) {
            throw Usage.error(spec, "--alone cannot be combined with --bunch");
        }
        if (nextGroupShare == null) {
            return company(spec, ordered(), 0);
        }
        List<Interval> left = bunches.isEmpty() ? Company.noted(notes).bunches() : ordered();
        if (left.isEmpty() || isAlone) {
            throw Usage.error(spec, "--next-group needs --bunch: the bunch that could have been let go");
        }
        return company(spec, left, nextGroupShare);
    }

    /** A usage error when one of the bunches that were typed does not end within a ride of this length. */
    void requireWithin(@Nullable CommandSpec spec, int rideSeconds) {
        for (int i = 0; i < bunches.size(); i++) {
            Interval bunch = bunches.get(i);
            if (bunch.toSecond() > rideSeconds) {
                throw Usage.refused(
                        spec,
                        "--bunch",
                        i,
                        (bunch.fromSecond() >= rideSeconds ? "lies" : "ends") + " after the end of the ride, which is "
                                + Interval.clock(rideSeconds) + " long; give times within it");
            }
        }
    }

    private List<Interval> ordered() {
        return bunches.stream()
                .sorted(Comparator.comparingInt(Interval::fromSecond))
                .toList();
    }

    private Company company(@Nullable CommandSpec spec, List<Interval> stretches, double nextGroup) {
        try {
            return new Company(stretches, isAlone, nextGroup);
        } catch (IllegalArgumentException e) {
            throw Usage.refused(spec, "--bunch", e.getMessage());
        }
    }

    /** Two elapsed times, {@code 0:12-1:21}. */
    static final class Stretch implements ITypeConverter<Interval> {
        private static final Pattern STRETCH = Pattern.compile("([^-]+)-([^-]+)");

        @Override
        public Interval convert(String value) {
            Matcher parts = STRETCH.matcher(value.strip());
            Integer from = parts.matches() ? OptionValues.seconds(parts.group(1).strip()) : null;
            Integer to = parts.matches() ? OptionValues.seconds(parts.group(2).strip()) : null;
            if (from == null || to == null || to <= from) {
                throw new TypeConversionException(
                        "expected two times in hours and minutes, the later one last, for instance 0:12-1:21"
                                + (value.contains(",") ? "; --bunch may be given several times" : ""));
            }
            return new Interval(from, to);
        }
    }
}
