package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The track as a line: positions laid on a plane that keeps shapes at this latitude, in units of a thousandth of the
 * longer side.
 */
final class Track {
    private static final int UNITS = 1000;
    private static final int MARGIN = 30;
    private static final int MOST_POINTS = 1800;

    private final Ride ride;
    private final Series latitude;
    private final Series longitude;
    private final double west;
    private final double north;
    private final double unitsPerDegreeNorth;
    private final double unitsPerDegreeEast;
    private final double width;
    private final double height;

    private Track(Ride ride, double south, double north, double west, double east) {
        this.ride = ride;
        this.latitude = ride.series(Channel.LATITUDE);
        this.longitude = ride.series(Channel.LONGITUDE);
        this.west = west;
        this.north = north;
        double narrowing = Math.cos(Math.toRadians((south + north) / 2));
        double longer = Math.max(Math.max(north - south, (east - west) * narrowing), 1e-6);
        this.unitsPerDegreeNorth = UNITS / longer;
        this.unitsPerDegreeEast = UNITS / longer * narrowing;
        this.width = (east - west) * unitsPerDegreeEast;
        this.height = (north - south) * unitsPerDegreeNorth;
    }

    /** The track of a ride, or null without positions, or where all of them are one place. */
    static @Nullable Track of(Ride ride) {
        if (!ride.has(Channel.LATITUDE) || !ride.has(Channel.LONGITUDE)) {
            return null;
        }
        double south = Double.POSITIVE_INFINITY;
        double north = Double.NEGATIVE_INFINITY;
        double west = Double.POSITIVE_INFINITY;
        double east = Double.NEGATIVE_INFINITY;
        for (int second = 0; second < ride.seconds(); second++) {
            double phi = ride.series(Channel.LATITUDE).get(second);
            double lambda = ride.series(Channel.LONGITUDE).get(second);
            if (!Double.isNaN(phi) && !Double.isNaN(lambda)) {
                south = Math.min(south, phi);
                north = Math.max(north, phi);
                west = Math.min(west, lambda);
                east = Math.max(east, lambda);
            }
        }
        return north - south + east - west > 1e-5 ? new Track(ride, south, north, west, east) : null;
    }

    double across(int second) {
        return (longitude.get(second) - west) * unitsPerDegreeEast + MARGIN;
    }

    double down(int second) {
        return (north - latitude.get(second)) * unitsPerDegreeNorth + MARGIN;
    }

    private boolean isKnown(int second) {
        return latitude.isMeasured(second) && longitude.isMeasured(second);
    }

    /** The line, each stretch in the colour and width of its effort, with start, end and the findings' numbers. */
    Markup draw(RideReview review, RideDetail detail) {
        Svg svg = new Svg();
        svg.open(
                "svg",
                "class",
                "track",
                "viewBox",
                "0 0 " + Svg.at(width + 2 * MARGIN) + " " + Svg.at(height + 2 * MARGIN),
                "role",
                "img");
        svg.words("title", "The track");
        svg.words(
                "desc",
                "North is up. The line is thicker and, in this order, darker or brighter where the three-minute mean of"
                        + " power was higher.");
        lines(svg, review, detail);
        ends(svg);
        List<Interval> stretches = review.pacing().findings().stream()
                .map(finding -> finding.when())
                .toList();
        for (int i = 0; i < stretches.size(); i++) {
            flag(svg, stretches.get(i).fromSecond(), Integer.toString(i + 1));
        }
        svg.leaf("circle", "class", "here", "cx", "-100", "cy", "-100", "r", "11");
        return svg.close("svg").done();
    }

    private void lines(Svg svg, RideReview review, RideDetail detail) {
        int step = Math.max(1, ride.seconds() / MOST_POINTS);
        StringBuilder path = new StringBuilder();
        String style = "";
        int last = -1;
        for (int second = 0; second < ride.seconds(); second += step) {
            if (!isKnown(second)) {
                continue;
            }
            String now = style(
                    detail.band(detail.power180sW().get(second), review.rider().thresholdPowerW()));
            if (!now.equals(style)) {
                flush(svg, style, path);
                style = now;
                if (last >= 0) {
                    path.append('M').append(point(last));
                }
            }
            path.append(path.length() == 0 ? 'M' : 'L').append(point(second));
            last = second;
        }
        flush(svg, style, path);
    }

    private static void flush(Svg svg, String style, StringBuilder path) {
        if (path.length() > 0) {
            svg.leaf("path", "class", style, "d", path.toString());
            path.setLength(0);
        }
    }

    private static String style(RideDetail.@Nullable Band band) {
        if (band == null) {
            return "effort-none";
        }
        return switch (band) {
            case BELOW -> "effort-below";
            case WITHIN -> "effort-within";
            case ABOVE -> "effort-above";
            case ABOVE_THRESHOLD -> "effort-threshold";
        };
    }

    private void ends(Svg svg) {
        List<Integer> known = new ArrayList<>();
        for (int second = 0; second < ride.seconds(); second++) {
            if (isKnown(second)) {
                known.add(second);
            }
        }
        int first = known.get(0);
        int last = known.get(known.size() - 1);
        svg.leaf("circle", "class", "start", "cx", Svg.at(across(first)), "cy", Svg.at(down(first)), "r", "9");
        svg.rect("finish", Svg.at(across(last) - 8), "16", Svg.at(down(last) - 8), "16");
    }

    private void flag(Svg svg, int from, String number) {
        int second = from;
        while (second < ride.seconds() && !isKnown(second)) {
            second++;
        }
        if (second < ride.seconds()) {
            svg.words(
                    "text",
                    number,
                    "class",
                    "track-flag",
                    "x",
                    Svg.at(across(second) + 12),
                    "y",
                    Svg.at(down(second) - 10));
        }
    }

    private String point(int second) {
        return Svg.at(across(second)) + " " + Svg.at(down(second));
    }
}
