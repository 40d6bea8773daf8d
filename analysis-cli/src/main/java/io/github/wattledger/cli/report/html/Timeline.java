package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.ReportUnit;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The ride over time: drawn, and as numbers for the script that makes it move.
 *
 * @param drawn the drawing, or null where there is nothing to draw
 * @param seconds the channels, packed
 * @param settings what the script needs to know of them, as JSON; it holds numbers and fixed words alone
 * @param hasGuide whether there is a sustainable power to draw
 * @param hasThreshold whether there is a threshold power to draw
 * @param hasBunch whether the rider names a bunch to draw
 * @param hasProposedBunch whether the ride itself proposes one
 */
public record Timeline(
        @Nullable Markup drawn,
        Markup seconds,
        Markup settings,
        boolean hasGuide,
        boolean hasThreshold,
        boolean hasBunch,
        boolean hasProposedBunch) {
    static Timeline of(
            RideReview review, RideDetail detail, TimelineDrawing drawing, @Nullable Track track, Units units) {
        Ride ride = review.ride();
        PackedSeconds packed = new PackedSeconds(ride.seconds());
        List<String> channels = new ArrayList<>();
        packed.add(second -> code(ride.state(second)), 1);
        channels.add(channel("state", 1));
        add(packed, channels, "power", detail.power30sW(), 1);
        add(packed, channels, "watts", ride.timerSeries(Channel.POWER), 1);
        add(packed, channels, "heart", ride.series(Channel.HEART_RATE), 1);
        Series balance = detail.wPrimeBalanceKJ();
        if (balance != null) {
            add(packed, channels, "balance", balance, 0.1);
        }
        add(packed, channels, "altitude", ride.series(Channel.ALTITUDE), 0.5);
        add(packed, channels, "temperature", ride.series(Channel.TEMPERATURE), 0.1);
        add(packed, channels, "distance", ride.series(Channel.DISTANCE), 1);
        if (track != null) {
            packed.add(track::across, 1);
            channels.add(channel("across", 1));
            packed.add(track::down, 1);
            channels.add(channel("down", 1));
        }
        return new Timeline(
                drawing.draw(),
                new Markup(packed.base64()),
                new Markup(settings(review, detail, drawing, channels, units)),
                detail.sustainable() != null && detail.power30sW().hasAny(),
                review.rider().thresholdPowerW() != null && detail.power30sW().hasAny(),
                !Stretches.inBunch(review).isEmpty(),
                !Stretches.proposedBunch(review).isEmpty());
    }

    /** The script knows the states by these numbers. */
    private static int code(SecondState state) {
        return switch (state) {
            case RIDING -> 0;
            case STOPPED -> 1;
            case PAUSED -> 2;
            case MISSING -> 3;
        };
    }

    private static void add(PackedSeconds packed, List<String> channels, String name, Series values, double step) {
        if (values.hasAny()) {
            packed.add(values, step);
            channels.add(channel(name, step));
        }
    }

    private static String channel(String name, double step) {
        return "{\"name\":\"" + name + "\",\"step\":" + step + "}";
    }

    private static String settings(
            RideReview review, RideDetail detail, TimelineDrawing drawing, List<String> channels, Units units) {
        StringBuilder json =
                new StringBuilder("{\"seconds\":").append(review.ride().seconds());
        json.append(",\"channels\":[").append(String.join(",", channels)).append(']');
        json.append(",\"units\":").append(units(units));
        SustainablePower sustainable = detail.sustainable();
        if (sustainable != null) {
            json.append(",\"guide\":[")
                    .append(sustainable.lowW())
                    .append(',')
                    .append(sustainable.watts())
                    .append(',')
                    .append(sustainable.highW())
                    .append(']');
        }
        Double threshold = review.rider().thresholdPowerW();
        if (threshold != null) {
            json.append(",\"threshold\":").append(threshold);
        }
        json.append(",\"bunches\":").append(parts(Stretches.inBunch(review)));
        json.append(",\"proposedBunches\":").append(parts(Stretches.proposedBunch(review)));
        json.append(",\"findings\":[");
        List<Finding> findings = review.pacing().findings();
        for (int i = 0; i < findings.size(); i++) {
            json.append(i == 0 ? "" : ",")
                    .append("{\"number\":")
                    .append(i + 1)
                    .append(",\"lane\":")
                    .append(drawing.lanes().get(i))
                    .append(",\"from\":")
                    .append(findings.get(i).when().fromSecond())
                    .append(",\"to\":")
                    .append(findings.get(i).when().toSecond())
                    .append(",\"parts\":")
                    .append(parts(Stretches.of(findings.get(i))))
                    .append('}');
        }
        return json.append("]}").toString();
    }

    /** For each kind of number: by what the script divides it, what it adds then, and the unit that results. */
    private static String units(Units units) {
        return "{\"place\":\"" + units.place() + "\","
                + unit("distance", units.distance()) + ","
                + unit("height", units.height()) + ","
                + unit("speed", units.speed()) + ","
                + unit("temperature", units.temperature()) + "}";
    }

    private static String unit(String name, ReportUnit unit) {
        return "\"" + name + "\":{\"symbol\":\"" + unit.symbol() + "\",\"size\":" + unit.size() + ",\"zero\":"
                + unit.zero() + "}";
    }

    private static String parts(List<Interval> stretches) {
        return stretches.stream()
                .map(part -> "[" + part.fromSecond() + "," + part.toSecond() + "]")
                .collect(Collectors.joining(",", "[", "]"));
    }
}
