package io.github.wattledger.read.fit;

import com.garmin.fit.Event;
import com.garmin.fit.EventMesg;
import com.garmin.fit.Mesg;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The gear in use. An event reports each change, and the gear holds until the next. Some recorders write all events
 * after the last record, so only the times say which gear a record was ridden in. The event's data are, from the lowest byte
 * up, the number of the rear gear, its teeth, the number of the front gear, its teeth (public FIT profile,
 * {@code gear_change_data}).
 */
final class FitGears {
    private static final int TEETH_SHIFT = 8;
    private static final int FRONT_SHIFT = 16;
    private static final int BYTE = 0xFF;

    private final List<Change> changes = new ArrayList<>();

    private record Change(long epochSecond, double frontTeeth, double rearTeeth) {}

    /** Whether an event is a change of gear. */
    static boolean isChange(int event) {
        return event == Event.FRONT_GEAR_CHANGE.getValue() || event == Event.REAR_GEAR_CHANGE.getValue();
    }

    /** Takes a change of gear. */
    void accept(Mesg message, long epochSecond) {
        Long data = message.getFieldLongValue(EventMesg.DataFieldNum);
        if (data != null) {
            changes.add(new Change(epochSecond, teeth(data >> FRONT_SHIFT), teeth(data)));
        }
    }

    /**
     * The teeth of the gear in the two lowest bytes. Those of a gear without a number are not believed: a recorder has
     * been seen to write 22 teeth at the front where speed and cadence say 41.
     */
    private static double teeth(long gear) {
        int number = (int) gear & BYTE;
        int teeth = (int) (gear >> TEETH_SHIFT) & BYTE;
        return isKnown(number) && isKnown(teeth) ? teeth : Double.NaN;
    }

    /** The profile's "not known" is 0; some recorders write 255. */
    private static boolean isKnown(int value) {
        return value != 0 && value != BYTE;
    }

    /** The samples with the gear that each was ridden in; before the first change it is not known. */
    Samples complete(Samples samples) {
        if (changes.isEmpty()) {
            return samples;
        }
        List<Change> ordered = new ArrayList<>(changes);
        ordered.sort(Comparator.comparingLong(Change::epochSecond));
        Samples.Builder completed = Samples.builder();
        int next = 0;
        double frontTeeth = Double.NaN;
        double rearTeeth = Double.NaN;
        for (int i = 0; i < samples.size(); i++) {
            completed.at(samples.epochSecond(i));
            for (Channel channel : samples.channels()) {
                completed.set(channel, samples.get(channel, i));
            }
            while (next < ordered.size() && ordered.get(next).epochSecond <= samples.epochSecond(i)) {
                // A change at one end often does not repeat what is in use at the other.
                Change change = ordered.get(next++);
                frontTeeth = Double.isNaN(change.frontTeeth) ? frontTeeth : change.frontTeeth;
                rearTeeth = Double.isNaN(change.rearTeeth) ? rearTeeth : change.rearTeeth;
            }
            completed.set(Channel.FRONT_TEETH, frontTeeth);
            completed.set(Channel.REAR_TEETH, rearTeeth);
        }
        return completed.build();
    }
}
