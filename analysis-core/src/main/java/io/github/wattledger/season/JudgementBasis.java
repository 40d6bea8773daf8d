package io.github.wattledger.season;

import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.rider.RideNotes;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import org.jspecify.annotations.Nullable;

/**
 * All that the judgements of a season's rides rest on, as one digest: the rides as they are stored with their judgements, the
 * days that they count for, the notes, the rider, the limits and the version of the analysis. While it is the one by which
 * all rides were found to be judged right, they still are, and none of them has to be looked at.
 */
final class JudgementBasis {
    private final Judge judge;
    private final @Nullable LocalDate today;
    private final Set<String> contents;
    private final Map<String, RideNotes> notes;

    /**
     * What is the same for all rides.
     *
     * @param today the day of the review, or null
     * @param contents the contents of the season's files; rides of others neither say anything nor are judged
     * @param notes what the rider wrote down about the rides of a content; contents without notes need not be in it
     */
    JudgementBasis(Judge judge, @Nullable LocalDate today, Set<String> contents, Map<String, RideNotes> notes) {
        this.judge = judge;
        this.today = today;
        this.contents = contents;
        this.notes = notes;
    }

    /** The digest for the rides of a store; null where another process has taken one of them out. */
    @Nullable String of(SortedMap<StoredRide.Key, RideRow> rides) {
        StringBuilder all = new StringBuilder(judge.basis());
        for (RideRow ride : rides.values()) {
            if (!contents.contains(ride.key().sha256())) {
                continue;
            }
            if (ride.checkSum() == null) {
                return null;
            }
            LocalDate day = judge.day(ride.start(), ride.utcOffsetSeconds());
            all.append('\n').append(ride.key().sha256());
            all.append(' ').append(ride.key().sessionIndex());
            all.append(' ').append(ride.isCurrent());
            all.append(' ').append(ride.checkSum().longValue());
            all.append(' ').append(ride.judged().key());
            all.append(' ').append(day);
            all.append(' ').append(DateDoubt.of(ride.start(), day, today));
            RideNotes ofRide = notes.get(ride.key().sha256());
            if (ofRide != null && !ofRide.isEmpty()) {
                all.append(' ').append(ofRide);
            }
        }
        return ContentDigest.sha256(all.toString().getBytes(StandardCharsets.UTF_8));
    }
}
