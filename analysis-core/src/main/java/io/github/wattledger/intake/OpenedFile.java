package io.github.wattledger.intake;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Recording;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A recorded file that was read, and which of its sessions are rides.
 *
 * @param name what the file is called in messages
 * @param shownName its name without its folder
 * @param bytes its size, bytes
 * @param sha256 the SHA-256 digest of its bytes, lower-case hexadecimal
 * @param read what was read from it
 */
record OpenedFile(String name, String shownName, int bytes, String sha256, ReadResult read) {
    private static final int MOST_SESSIONS_NAMED = 12;

    /** The FIT sport of the way between two sports. */
    private static final String TRANSITION = "transition";

    /**
     * Reads a file, its bytes or a stream.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the name
     */
    static OpenedFile of(RideInput input, ReadOptions options, Cancellation cancellation)
            throws UnreadableRideException {
        cancellation.check();
        byte[] content = input.content(options.limits());
        String sha256 = ContentDigest.sha256(content);
        return of(content, sha256, input.name(), input.shownName(), options, cancellation);
    }

    /**
     * Reads a file's content.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the name
     */
    static OpenedFile of(
            byte[] content,
            String sha256,
            String name,
            String shownName,
            ReadOptions options,
            Cancellation cancellation)
            throws UnreadableRideException {
        return new OpenedFile(
                name, shownName, content.length, sha256, RideFiles.read(content, name, options, cancellation));
    }

    /** Damage that was survived and fields that were left out. */
    List<QualityNote> notes() {
        List<QualityNote> notes = new ArrayList<>();
        read.notes().forEach(note -> notes.add(new QualityNote(note.code(), null, note.text())));
        return notes;
    }

    /** The sessions of cycling; where no session names it, those of an unnamed sport; possibly none. */
    List<Recording> cycling() {
        List<Recording> named =
                read.recordings().stream().filter(Recording::isCycling).toList();
        return named.isEmpty()
                ? read.recordings().stream().filter(Recording::isOfUnnamedSport).toList()
                : named;
    }

    /** How many different sports the sessions name. */
    int sports() {
        return (int) read.recordings().stream()
                .map(Recording::sport)
                .filter(sport -> sport != null && !sport.equals(TRANSITION))
                .distinct()
                .count();
    }

    /** The notes on the file for a reader who sees one session only: they say when the file holds others. */
    List<QualityNote> notesBeside(Recording chosen) {
        List<QualityNote> notes = notes();
        if (read.recordings().size() > 1) {
            notes.add(new QualityNote(
                    "other-sessions",
                    null,
                    "The file holds " + numbered() + ". Only session " + (chosen.sessionIndex() + 1)
                            + " is reviewed."));
        }
        return notes;
    }

    /**
     * The session to take.
     *
     * @param sessionIndex which one, counted from 0, or null for the first of cycling
     * @throws UnreadableRideException when there is no such session; its message is one line that begins with the name
     */
    Recording chosen(@Nullable Integer sessionIndex) throws UnreadableRideException {
        List<Recording> recordings = read.recordings();
        if (sessionIndex != null && sessionIndex >= recordings.size()) {
            throw new UnreadableRideException(
                    Reason.NO_SUCH_SESSION,
                    name + ": has no session " + (sessionIndex + 1) + "; it holds " + numbered());
        }
        if (sessionIndex != null) {
            return recordings.get(sessionIndex);
        }
        List<Recording> cycling = cycling();
        if (cycling.isEmpty()) {
            throw new UnreadableRideException(
                    Reason.NO_CYCLING, name + ": holds no cycling, but " + numbered() + "; choose a file with a ride");
        }
        return cycling.get(0);
    }

    /** The sessions with their numbers, counted from 1, for messages. */
    private String numbered() {
        List<Recording> recordings = read.recordings();
        String first = recordings.stream()
                .limit(MOST_SESSIONS_NAMED)
                .map(recording -> (recording.sessionIndex() + 1) + " ("
                        + (recording.sport() == null
                                ? "unnamed sport"
                                : recording.sport().replace('_', ' ')) + ")")
                .collect(Collectors.joining(", "));
        int more = recordings.size() - MOST_SESSIONS_NAMED;
        String sessions = recordings.size() == 1 ? "session " : "sessions ";
        return sessions + first + (more > 0 ? " and " + more + " more" : "");
    }
}
