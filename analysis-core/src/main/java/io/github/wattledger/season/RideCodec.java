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
import java.util.function.IntToDoubleFunction;
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

        private boolean expresses(double value) {
            double number = Math.rint((value + offset) * scale);
            return Math.abs(number) < LARGEST_EXPRESSED
                    && Double.doubleToLongBits(value((long) number)) == Double.doubleToLongBits(value);
        }

        private long number(double value) {
            return (long) Math.rint((value + offset) * scale);
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
                Series series = ride.series(channel);
                columns.put(channel, pack(series.size(), series::get));
            }
        }
        return columns;
    }

    /** The states, one a second, by their place in {@link #STATES}. */
    static Column packStates(Ride ride) {
        return pack(ride.seconds(), second -> STATES.indexOf(ride.state(second)));
    }

    /** The bounds of the laps, in pairs. */
    static Column packLaps(Ride ride) {
        List<Interval> laps = ride.laps();
        return pack(
                2 * laps.size(),
                i -> i % 2 == 0 ? laps.get(i / 2).fromSecond() : laps.get(i / 2).toSecond());
    }

    static Series unpack(Column column, int size) {
        Numbers numbers = new Numbers(inflate(column.bytes().content));
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

    private static Column pack(int size, IntToDoubleFunction values) {
        Encoding encoding = encodingFor(size, values);
        ByteArrayOutputStream numbers = new ByteArrayOutputStream(size + 16);
        long last = 0;
        for (int i = 0; i < size; i++) {
            double value = values.applyAsDouble(i);
            if (Double.isNaN(value)) {
                write(numbers, MISSING);
            } else if (encoding.expresses(value)) {
                long number = encoding.number(value);
                long difference = number - last;
                write(numbers, ((difference << 1) ^ (difference >> 63)) + FIRST_DIFFERENCE);
                last = number;
            } else {
                write(numbers, UNEXPRESSED);
                long bits = Double.doubleToLongBits(value);
                for (int shift = 56; shift >= 0; shift -= 8) {
                    numbers.write((int) (bits >>> shift));
                }
            }
        }
        return new Column(encoding, new Bytes(deflate(numbers.toByteArray())));
    }

    /** The coarsest scale of those that leave the fewest values unexpressed. */
    private static Encoding encodingFor(int size, IntToDoubleFunction values) {
        Encoding best = Encoding.UNITS;
        int fewest = Integer.MAX_VALUE;
        for (Encoding encoding : Encoding.values()) {
            int unexpressed = 0;
            for (int i = 0; i < size && unexpressed < fewest; i++) {
                double value = values.applyAsDouble(i);
                if (!Double.isNaN(value) && !encoding.expresses(value)) {
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

    private static void write(ByteArrayOutputStream out, long number) {
        long rest = number;
        while (rest > 0x7F) {
            out.write((int) ((rest & 0x7F) | 0x80));
            rest >>>= 7;
        }
        out.write((int) rest);
    }

    private static byte[] deflate(byte[] content) {
        Deflater deflater = new Deflater(6);
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

    /** Reads base-128 numbers. */
    private static final class Numbers {
        private final byte[] bytes;
        private int next;

        Numbers(byte[] bytes) {
            this.bytes = bytes;
        }

        long next() {
            long number = 0;
            int shift = 0;
            while (true) {
                byte each = bytes[next++];
                number |= (long) (each & 0x7F) << shift;
                if (each >= 0) {
                    return number;
                }
                shift += 7;
            }
        }

        long eightBytes() {
            long bits = 0;
            for (int i = 0; i < Long.BYTES; i++) {
                bits = (bits << 8) | (bytes[next++] & 0xFF);
            }
            return bits;
        }
    }
}
