package io.github.wattledger.read.fit;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Deals the messages of a file out to its sessions. Session messages often come last, so only the time tells what
 * belongs to which: a message belongs to the last session that began at or before it, or else to the first.
 */
final class FitSessionSplit {
    private final FitMessages messages;
    private final List<FitSession> sessions;

    FitSessionSplit(FitMessages messages) {
        this.messages = messages;
        this.sessions = messages.sessions().stream()
                .sorted(Comparator.comparingLong(FitSession::startEpochSecond))
                .toList();
    }

    /** One recording for each session that has samples; a single one when the file has no session message. */
    List<Recording> recordings() {
        Samples samples = messages.samples();
        if (sessions.isEmpty()) {
            return List.of(new Recording(
                    samples,
                    messages.timerEvents(),
                    messages.laps(),
                    null,
                    messages.device(null),
                    messages.sport(),
                    0,
                    messages.utcOffsetSeconds()));
        }
        List<Recording> recordings = new ArrayList<>();
        for (int index = 0; index < sessions.size(); index++) {
            Samples own = sessions.size() == 1 ? samples : samplesOf(samples, index);
            if (own.size() > 0) {
                recordings.add(recording(index, own));
            }
        }
        return recordings;
    }

    private Recording recording(int index, Samples own) {
        FitSession session = sessions.get(index);
        List<TimerEvent> events = messages.timerEvents().stream()
                .filter(event -> sessionAt(event.epochSecond()) == index)
                .toList();
        List<Lap> laps = messages.laps().stream()
                .filter(lap -> sessionAt(lap.startEpochSecond()) == index)
                .toList();
        return new Recording(
                own,
                events,
                laps,
                session.totals(),
                messages.device(session.thresholdPowerW()),
                session.sport() != null ? session.sport() : messages.sport(),
                index,
                messages.utcOffsetSeconds());
    }

    private int sessionAt(long epochSecond) {
        int found = 0;
        for (int index = 1; index < sessions.size(); index++) {
            if (sessions.get(index).startEpochSecond() <= epochSecond) {
                found = index;
            }
        }
        return found;
    }

    private Samples samplesOf(Samples all, int sessionIndex) {
        Samples.Builder own = Samples.builder();
        for (int i = 0; i < all.size(); i++) {
            if (sessionAt(all.epochSecond(i)) == sessionIndex) {
                own.at(all.epochSecond(i));
                for (Channel channel : all.channels()) {
                    own.set(channel, all.get(channel, i));
                }
            }
        }
        return own.build();
    }
}
