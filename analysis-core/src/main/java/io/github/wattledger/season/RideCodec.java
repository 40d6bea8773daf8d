package io.github.wattledger.season;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * Packs the seconds of a cleaned ride, bit for bit as they were, into a fraction of the recording's size.
 *
 * <p>A column is a list of whole numbers, one a second: 0 for "not measured", 1 for a value that the column's scale does
 * not express (its eight bytes follow, most significant first), otherwise 2 plus the zigzag of the difference to the last
 * expressed value, each written as a base-128 number with the low bits first, and all of it deflated (zlib). A value is
 * expressed when {@code number / scale - offset} gives exactly it.
 */
final class RideCodec {
    /**
     * What judging a ride anew needs. Positions are left out: what depends on them is kept as a {@link KeptEstimate}.
     */
    static final Set<Channel> KEPT = EnumSet.of(
            Channel.POWER,
            Channel.HEART_RATE,
            Channel.CADENCE,
            Channel.SPEED,
            Channel.DISTANCE,
            Channel.ALTITUDE,
            Channel.TEMPERATURE,
            Channel.FRONT_TEETH,
            Channel.REAR_TEETH);

    /** The store has a state by its place here, which must not change. */
    private static final List<SecondState> STATES =
            List.of(SecondState.RIDING, SecondState.STOPPED, SecondState.PAUSED, SecondState.MISSING);

    private static final int MISSING = 0;
    private static final int UNEXPRESSED = 1;
    private static final int FIRST_DIFFERENCE = 2;
    private static final double LARGEST_EXPRESSED = 1L << 40;
    private static final long NO_NUMBER = Long.MIN_VALUE;

    /** Takes 60 % of the time of the usual level, 6, and 1 % more room. */
    private static final int LEVEL = 4;

    private RideCodec() {}

    /** A scale on which the values of a column are whole numbers. */
    enum Encoding {
        UNITS(1, 0),
        TENTHS(10, 0),
        HUNDREDTHS(100, 0),
        THOUSANDTHS(1000, 0),
        /** Altitude in a FIT file. */
        FIFTHS_BELOW_500(5, 500);

        private final double scale;
        private final double offset;

        Encoding(double scale, double offset) {
            this.scale = scale;
            this.offset = offset;
        }

        private double value(long number) {
            return number / scale - offset;
        }

        /** The whole number that stands for a value; {@link #NO_NUMBER} where none gives exactly it. */
        private long number(double value) {
            double number = Math.rint((value + offset) * scale);
            return Math.abs(number) < LARGEST_EXPRESSED
                            && Double.doubleToRawLongBits(value((long) number)) == Double.doubleToRawLongBits(value)
                    ? (long) number
                    : NO_NUMBER;
        }
    }

    /** A packed column. */
    record Column(Encoding encoding, Bytes bytes) {}

    /** Bytes as a value. */
    static final class Bytes {
        private final byte[] content;

        Bytes(byte[] content) {
            this.content = content.clone();
        }

        byte[] toArray() {
            return content.clone();
        }
    }

    /** A ride with the kept channels alone. */
    static Ride slim(Ride ride) {
        Ride.Builder slim = Ride.builder(ride.start(), ride.seconds()).laps(ride.laps());
        for (Channel channel : KEPT) {
            if (ride.has(channel)) {
                slim.channel(channel, ride.series(channel));
            }
        }
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) != SecondState.RIDING) {
                slim.state(second, ride.state(second));
            }
        }
        return slim.build();
    }

    static Map<Channel, Column> pack(Ride ride) {
        Map<Channel, Column> columns = new EnumMap<>(Channel.class);
        for (Channel channel : KEPT) {
            if (ride.has(channel)) {
                columns.put(channel, pack(ride.series(channel).toArray()));
            }
        }
        return columns;
    }

    /** The states, one a second, by their place in {@link #STATES}. */
    static Column packStates(Ride ride) {
        return pack(IntStream.range(0, ride.seconds())
                .mapToDouble(second -> STATES.indexOf(ride.state(second)))
                .toArray());
    }

    /** The bounds of the laps, in pairs. */
    static Column packLaps(Ride ride) {
        return pack(ride.laps().stream()
                .flatMapToDouble(lap -> DoubleStream.of(lap.fromSecond(), lap.toSecond()))
                .toArray());
    }

    static Series unpack(Column column, int size) {
        NumberReader numbers = new NumberReader(inflate(column.bytes().content));
        double[] values = new double[size];
        long last = 0;
        for (int i = 0; i < size; i++) {
            long code = numbers.next();
            if (code == MISSING) {
                values[i] = Double.NaN;
            } else if (code == UNEXPRESSED) {
                values[i] = Double.longBitsToDouble(numbers.eightBytes());
            } else {
                long zigzag = code - FIRST_DIFFERENCE;
                last += (zigzag >>> 1) ^ -(zigzag & 1);
                values[i] = column.encoding().value(last);
            }
        }
        return Series.of(values);
    }

    static SecondState[] unpackStates(Column column, int seconds) {
        Series places = unpack(column, seconds);
        SecondState[] states = new SecondState[seconds];
        for (int second = 0; second < seconds; second++) {
            states[second] = STATES.get((int) places.get(second));
        }
        return states;
    }

    static List<Interval> unpackLaps(Column column, int count) {
        Series bounds = unpack(column, 2 * count);
        List<Interval> laps = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            laps.add(new Interval((int) bounds.get(2 * i), (int) bounds.get(2 * i + 1)));
        }
        return laps;
    }

    private static Column pack(double[] values) {
        Encoding encoding = encodingFor(values);
        NumberWriter numbers = new NumberWriter(values.length + 16);
        long last = 0;
        for (double value : values) {
            long number = encoding.number(value);
            if (Double.isNaN(value)) {
                numbers.write(MISSING);
            } else if (number != NO_NUMBER) {
                long difference = number - last;
                numbers.write(((difference << 1) ^ (difference >> 63)) + FIRST_DIFFERENCE);
                last = number;
            } else {
                numbers.write(UNEXPRESSED);
                numbers.writeEightBytes(Double.doubleToLongBits(value));
            }
        }
        return new Column(encoding, new Bytes(deflate(numbers.toByteArray())));
    }

    /** The coarsest scale of those that leave the fewest values unexpressed. */
    private static Encoding encodingFor(double[] values) {
        Encoding best = Encoding.UNITS;
        int fewest = Integer.MAX_VALUE;
        for (Encoding encoding : Encoding.values()) {
            int unexpressed = 0;
            for (int i = 0; i < values.length && unexpressed < fewest; i++) {
                if (!Double.isNaN(values[i]) && encoding.number(values[i]) == NO_NUMBER) {
                    unexpressed++;
                }
            }
            if (unexpressed < fewest) {
                best = encoding;
                fewest = unexpressed;
            }
        }
        return best;
    }

    private static byte[] deflate(byte[] content) {
        Deflater deflater = new Deflater(LEVEL);
        try {
            deflater.setInput(content);
            deflater.finish();
            ByteArrayOutputStream out = new ByteArrayOutputStream(content.length / 2 + 64);
            byte[] step = new byte[8192];
            while (!deflater.finished()) {
                out.write(step, 0, deflater.deflate(step));
            }
            return out.toByteArray();
        } finally {
            deflater.end();
        }
    }

    private static byte[] inflate(byte[] packed) {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(packed);
            ByteArrayOutputStream out = new ByteArrayOutputStream(packed.length * 3);
            byte[] step = new byte[8192];
            while (!inflater.finished()) {
                int count = inflater.inflate(step);
                if (count == 0 && !inflater.finished()) {
                    throw new IllegalArgumentException("a packed column of the store is cut short");
                }
                out.write(step, 0, count);
            }
            return out.toByteArray();
        } catch (DataFormatException e) {
            throw new IllegalArgumentException("a packed column of the store is damaged", e);
        } finally {
            inflater.end();
        }
    }
}
