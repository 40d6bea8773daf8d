package io.github.wattledger.read.csv;

import io.github.wattledger.ride.Channel;

/**
 * A column that is read for a channel.
 *
 * @param channel the channel
 * @param index its position in a row, from 0
 * @param header its name in the file
 * @param unit how to come from its numbers to the channel's
 * @param isBalanceByte whether it holds the byte in which the FIT profile packs the balance, not a share
 */
record CsvColumn(Channel channel, int index, String header, CsvUnit unit, boolean isBalanceByte) {
    private static final int RIGHT_LEG_FLAG = 0x80;
    private static final int BALANCE_MASK = 0x7F;
    private static final int PERCENT = 100;

    private static final double MOST_LATITUDE_DEGREES = 90;
    private static final double MOST_LONGITUDE_DEGREES = 180;

    /** The channel's value for a number in the column, or NaN when there can be none. */
    double value(double number) {
        if (isBalanceByte) {
            return leftShare(number);
        }
        double value = unit.apply(number);
        return switch (channel) {
            case LATITUDE -> Math.abs(value) <= MOST_LATITUDE_DEGREES ? value : Double.NaN;
            case LONGITUDE -> Math.abs(value) <= MOST_LONGITUDE_DEGREES ? value : Double.NaN;
            default -> value;
        };
    }

    /** The public FIT profile: the low seven bits hold a percentage, the high bit says that it is the right leg's. */
    private static double leftShare(double balance) {
        int bits = (int) balance;
        if (Double.isNaN(balance) || (bits & RIGHT_LEG_FLAG) == 0 || (bits & BALANCE_MASK) > PERCENT) {
            return Double.NaN;
        }
        return (PERCENT - (bits & BALANCE_MASK)) / (double) PERCENT;
    }
}
