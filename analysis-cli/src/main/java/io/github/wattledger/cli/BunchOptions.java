package io.github.wattledger.cli;

import io.github.wattledger.pacing.Company;
import io.github.wattledger.ride.Interval;
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
            paramLabel = "PERCENT",
            converter = Percent.class,
            description =
                    "Had you let the bunch go, a next group would have sheltered you as well for this share of the"
                            + " way, for instance 50%%. Without it: none would.")
    private @Nullable Double nextGroupShare;

    /** What was said; a usage error when it contradicts itself. */
    Company company(@Nullable CommandSpec spec) {
        if (isAlone && !bunches.isEmpty()) {
            throw Usage.error(spec, "--alone cannot be combined with --bunch");
        }
        if (nextGroupShare != null && bunches.isEmpty()) {
            throw Usage.error(spec, "--next-group needs --bunch: the bunch that could have been let go");
        }
        List<Interval> ordered = bunches.stream()
                .sorted(Comparator.comparingInt(Interval::fromSecond))
                .toList();
        try {
            return new Company(ordered, isAlone, nextGroupShare == null ? 0 : nextGroupShare);
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    /** Two elapsed times, {@code 0:12-1:21}. */
    static final class Stretch implements ITypeConverter<Interval> {
        private static final String EXPECTED = "expected two elapsed times, the later one last, for instance 0:12-1:21";
        private static final Pattern STRETCH = Pattern.compile("([^-]+)-([^-]+)");
        private static final OptionValues.ElapsedTime TIME = new OptionValues.ElapsedTime();

        @Override
        public Interval convert(String value) {
            Matcher parts = STRETCH.matcher(value);
            if (!parts.matches()) {
                throw refused(EXPECTED, value);
            }
            int from = TIME.convert(parts.group(1));
            int to = TIME.convert(parts.group(2));
            if (to <= from) {
                throw refused(EXPECTED, value);
            }
            return new Interval(from, to);
        }
    }

    /** A share in percent, {@code 50%}, as a fraction from 0 to 1. */
    static final class Percent implements ITypeConverter<Double> {
        private static final Pattern PERCENT = Pattern.compile("(\\d{1,3}\\.?\\d{0,6})%");

        @Override
        public Double convert(String value) {
            Matcher parts = PERCENT.matcher(value);
            double share = parts.matches() ? Double.parseDouble(parts.group(1)) / 100 : Double.NaN;
            if (!(share <= 1)) {
                throw refused("expected a share from 0% to 100%, for instance 50%", value);
            }
            return share;
        }
    }

    private static TypeConversionException refused(String expected, String value) {
        return new TypeConversionException(expected + ", got '" + value + "'");
    }
}
