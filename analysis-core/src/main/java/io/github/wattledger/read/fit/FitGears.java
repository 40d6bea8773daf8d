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
 * The gear in use, as events tell each change of it: it holds until the next. Some recorders write all events after the
 * last record, so only the times tell which gear a record was ridden in. The event's data are, from the lowest byte
 * up, the number of the rear gear, its teeth, the number of the front gear, its teeth (public FIT profile,
 * {@code gear_change_data}).
 */
final class FitGears {
    private static final int REAR_TEETH_SHIFT = 8;
    private static final int FRONT_TEETH_SHIFT = 24;
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
            changes.add(new Change(epochSecond, teeth(data >> FRONT_TEETH_SHIFT), teeth(data >> REAR_TEETH_SHIFT)));
        }
    }

    /** No cog has 0 teeth, and 255 is the profile's "not known". */
    private static double teeth(long shifted) {
        int teeth = (int) shifted & BYTE;
        return teeth == 0 || teeth == BYTE ? Double.NaN : teeth;
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
        for (int i = 0; i < samples.size(); i++) {
            completed.at(samples.epochSecond(i));
            for (Channel channel : samples.channels()) {
                completed.set(channel, samples.get(channel, i));
            }
            while (next < ordered.size() && ordered.get(next).epochSecond <= samples.epochSecond(i)) {
                next++;
            }
            if (next > 0) {
                completed.set(Channel.FRONT_TEETH, ordered.get(next - 1).frontTeeth);
                completed.set(Channel.REAR_TEETH, ordered.get(next - 1).rearTeeth);
            }
        }
        return completed.build();
    }
}
