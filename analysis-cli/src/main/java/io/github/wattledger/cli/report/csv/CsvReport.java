package io.github.wattledger.cli.report.csv;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * The cleaned recording, one row a second of the reviewed part: the time in UTC, the state of the second, and every
 * channel that was measured, in the order of {@link Channel}. A blank is a missing value. A number has as
 * many digits as it takes to read the same number back, with a decimal point on every machine.
 */
public final class CsvReport implements Report {
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();

    /** Whole numbers up to here are exact in a double, and fit a long. */
    private static final double MOST_EXACT_WHOLE = 1e15;

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        Ride ride = review.ride();
        List<Channel> channels = new ArrayList<>(ride.channels());
        // Not closed: what is written to belongs to the caller.
        CSVPrinter table = new CSVPrinter(out, FORMAT);
        table.print("time");
        table.print("state");
        for (Channel channel : channels) {
            table.print(column(channel));
        }
        table.println();
        for (int second = review.reviewed().fromSecond();
                second < review.reviewed().toSecond();
                second++) {
            table.print(ride.start().plusSeconds(second).toString());
            table.print(word(ride.state(second)));
            for (Channel channel : channels) {
                double value = ride.series(channel).get(second);
                table.print(Double.isNaN(value) ? null : digits(value));
            }
            table.println();
        }
    }

    /** A channel's name as a column, its unit at the end. */
    static String column(Channel channel) {
        return switch (channel) {
            case POWER -> "power_w";
            case HEART_RATE -> "heart_rate_bpm";
            case CADENCE -> "cadence_rpm";
            case SPEED -> "speed_mps";
            case DISTANCE -> "distance_m";
            case ALTITUDE -> "altitude_m";
            case LATITUDE -> "latitude_deg";
            case LONGITUDE -> "longitude_deg";
            case TEMPERATURE -> "temperature_c";
            case LEFT_SHARE -> "left_share";
            case ACCUMULATED_WORK -> "accumulated_work_j";
            case RESPIRATION -> "respiration_rpm";
            case FRONT_TEETH -> "front_teeth";
            case REAR_TEETH -> "rear_teeth";
        };
    }

    private static String word(SecondState state) {
        return switch (state) {
            case RIDING -> "riding";
            case STOPPED -> "stopped";
            case PAUSED -> "paused";
            case MISSING -> "missing";
        };
    }

    /** The shortest digits that give the number back, without exponent, trailing {@code .0} or minus zero. */
    static String digits(double value) {
        if (value == Math.rint(value) && Math.abs(value) < MOST_EXACT_WHOLE) {
            return Long.toString((long) value);
        }
        String shortest = Double.toString(value);
        return shortest.indexOf('E') < 0
                ? shortest
                : new BigDecimal(shortest).stripTrailingZeros().toPlainString();
    }
}
