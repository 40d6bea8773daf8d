package io.github.wattledger.read.fit;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Gives each message of a file to one of its sessions. Session messages often come last, so only the time says what
 * belongs to which. A message belongs to the last session that began at or before it; one before all sessions belongs to
 * the first. In a file that breaks off, what comes after the last session's end belongs to one whose message was lost.
 */
final class FitSessionSplit {
    /** Recorders write a few more samples while they close a session. */
    private static final int CLOSING_SECONDS = 10;

    /** What lies further away is a clock gone wrong, which the cleaning puts right. */
    private static final long LEAP_SECONDS = 86_400;

    private final FitMessages messages;
    private final Samples samples;
    private final boolean breaksOff;
    private final List<FitSession> sessions;

    FitSessionSplit(FitMessages messages, Samples samples, boolean breaksOff) {
        this.messages = messages;
        this.samples = samples;
        this.breaksOff = breaksOff;
        List<FitSession> byStart = new ArrayList<>(messages.sessions());
        byStart.sort(Comparator.comparingLong(FitSession::startEpochSecond));
        this.sessions = List.copyOf(byStart);
    }

    /** One recording for each session that has samples; a single one when the file has no session message. */
    List<Recording> recordings() {
        if (sessions.isEmpty()) {
            return List.of(recording(samples, null, messages.timerEvents(), messages.laps(), 0));
        }
        int lost = sessions.size();
        List<Recording> recordings = new ArrayList<>();
        for (int index = 0; index <= lost; index++) {
            Samples own = samplesOf(index);
            if (own.size() > 0) {
                List<TimerEvent> events = within(index, messages.timerEvents(), TimerEvent::epochSecond);
                List<Lap> laps = within(index, messages.laps(), Lap::startEpochSecond);
                recordings.add(
                        recording(own, index == lost ? null : sessions.get(index), events, laps, recordings.size()));
            }
        }
        return recordings;
    }

    private <T> List<T> within(int session, List<T> all, ToLongFunction<T> epochSecond) {
        List<T> within = new ArrayList<>();
        for (T each : all) {
            if (sessionAt(epochSecond.applyAsLong(each)) == session) {
                within.add(each);
            }
        }
        return within;
    }

    private Recording recording(
            Samples own, @Nullable FitSession session, List<TimerEvent> events, List<Lap> laps, int sessionIndex) {
        String ownSport = session == null ? null : session.sport();
        String ownSubSport = session == null ? null : session.subSport();
        Recording recording = new Recording(
                own,
                events,
                laps,
                session == null ? null : session.totals(),
                messages.device(session == null ? null : session.thresholdPowerW()),
                ownSport != null ? ownSport : messages.sport(),
                sessionIndex,
                messages.utcOffsetSeconds());
        return recording.withSubSport(ownSubSport != null ? ownSubSport : messages.subSport());
    }

    private int sessionAt(long epochSecond) {
        int last = sessions.size() - 1;
        if (breaksOff) {
            long after = epochSecond - sessions.get(last).endEpochSecond();
            if (after > CLOSING_SECONDS && after < LEAP_SECONDS) {
                return sessions.size();
            }
        }
        int found = 0;
        for (int index = 1; index < sessions.size(); index++) {
            if (sessions.get(index).startEpochSecond() <= epochSecond) {
                found = index;
            }
        }
        return found;
    }

    private Samples samplesOf(int sessionIndex) {
        if (sessions.size() == 1 && !breaksOff) {
            return sessionIndex == 0 ? samples : Samples.builder().build();
        }
        Samples.Builder own = Samples.builder();
        for (int i = 0; i < samples.size(); i++) {
            if (sessionAt(samples.epochSecond(i)) == sessionIndex) {
                own.at(samples.epochSecond(i));
                for (Channel channel : samples.channels()) {
                    own.set(channel, samples.get(channel, i));
                }
            }
        }
        return own.build();
    }
}
