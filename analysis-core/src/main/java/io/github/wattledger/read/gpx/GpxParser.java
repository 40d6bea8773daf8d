package io.github.wattledger.read.gpx;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** The tracks of a GPX document with their times, as recordings. */
final class GpxParser implements GpxWalk.Elements {
    private static final int LONGEST_PREFIX = 40;
    private static final int MOST_PREFIXES = 5;

    /** Tracks beyond this many are read as one with the last: each costs memory of its own. */
    private static final int MOST_TRACKS = 200;

    private final int maximumSamples;
    private final Cancellation cancellation;
    private final List<GpxTrack> tracks = new ArrayList<>();
    private final Set<String> declaredPrefixes = new LinkedHashSet<>(Set.of("xml", "xmlns"));
    private final Set<String> undeclaredPrefixes = new TreeSet<>();

    private @Nullable String creator;
    private @Nullable GpxPoint point;
    private GpxTrack track = new GpxTrack(1);
    private int trackCount;
    private int sampleCount;
    private int pointsWithoutTime;
    private boolean inTrack;
    private boolean inSegment;
    private @Nullable String damagedAt;
    private @Nullable ReadNote encodingNote;
    private int depthInTrack;

    /**
     * @param maximumSamples most points with a time
     * @param cancellation when to end early
     */
    GpxParser(int maximumSamples, Cancellation cancellation) {
        this.maximumSamples = maximumSamples;
        this.cancellation = cancellation;
    }

    /** Takes all that comes before the end or the damage. */
    void parse(byte[] content) throws UnreadableRideException {
        GpxWalk walk = GpxWalk.through(content, cancellation, this);
        encodingNote = walk.encodingNote();
        damagedAt = walk.damagedAt();
    }

    @Override
    public void start(String local, XMLStreamReader reader) {
        notePrefixes(reader);
        depthInTrack += inTrack ? 1 : 0;
        switch (local) {
            case "gpx" -> creator = reader.getAttributeValue(null, "creator");
            case "trk" -> {
                inTrack = true;
                depthInTrack = 0;
                beginTrack();
            }
            case "trkseg" -> {
                inSegment = true;
                track.beginSegment();
            }
            case "trkpt" -> {
                if (inSegment) {
                    point = new GpxPoint(reader.getAttributeValue(null, "lat"), reader.getAttributeValue(null, "lon"));
                }
            }
            default -> {}
        }
    }

    @Override
    public void end(String local, String text) throws UnreadableRideException {
        switch (local) {
            case "trkpt" -> {
                if (point != null) {
                    add(point);
                    point = null;
                }
            }
            case "trkseg" -> inSegment = false;
            case "trk" -> inTrack = false;
            case "type" -> {
                if (inTrack && depthInTrack == 1 && !text.isEmpty()) {
                    track.addSport(text);
                }
            }
            default -> {
                if (point != null) {
                    point.set(local.toLowerCase(Locale.ROOT), text.strip());
                }
            }
        }
        depthInTrack -= inTrack ? 1 : 0;
    }

    private void beginTrack() {
        trackCount++;
        if (tracks.size() < MOST_TRACKS) {
            track = new GpxTrack(trackCount);
        }
    }

    private void add(GpxPoint complete) throws UnreadableRideException {
        if (complete.epochSecond().isEmpty()) {
            pointsWithoutTime++;
        } else if (sampleCount++ == maximumSamples) {
            throw new UnreadableRideException(
                    Reason.TOO_LARGE,
                    String.format(
                            Locale.ROOT,
                            "holds more than %,d samples, the most that is read; split it first",
                            maximumSamples));
        }
        track.add(complete);
        if (track.sampleCount() == 1 && (tracks.isEmpty() || tracks.get(tracks.size() - 1) != track)) {
            tracks.add(track);
        }
    }

    private void notePrefixes(XMLStreamReader reader) {
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            String name = reader.getAttributeLocalName(i);
            if ("xmlns".equals(reader.getAttributePrefix(i))) {
                declaredPrefixes.add(name);
            } else if (name.startsWith("xmlns:")) {
                declaredPrefixes.add(name.substring("xmlns:".length()));
            }
        }
        String name = reader.getLocalName();
        int colon = name.indexOf(':');
        if (colon > 0
                && undeclaredPrefixes.size() < MOST_PREFIXES
                && !declaredPrefixes.contains(name.substring(0, colon))) {
            undeclaredPrefixes.add(ReadNote.printable(name.substring(0, colon), LONGEST_PREFIX));
        }
    }

    /** A recording for each track that has points with a time. */
    ReadResult result(String format) throws UnreadableRideException {
        if (!tracks.isEmpty() && tracks.stream().allMatch(GpxTrack::isPlanned)) {
            throw new UnreadableRideException(
                    Reason.NOT_A_RECORDING,
                    "has times that nobody rode, at one constant speed or all alike: it is a planned route; export the"
                            + " recorded ride, or make a plan for it with wattledger plan (in the library, RacePlan)");
        }
        if (tracks.isEmpty()) {
            boolean endsEarly = damagedAt != null && pointsWithoutTime == 0;
            throw new UnreadableRideException(endsEarly ? Reason.DAMAGED : Reason.NOT_A_RECORDING, whyEmpty());
        }
        List<ReadNote> notes = new ArrayList<>();
        if (encodingNote != null) {
            notes.add(encodingNote);
        }
        if (pointsWithoutTime > 0) {
            notes.add(new ReadNote(
                    "points-without-time",
                    String.format(Locale.ROOT, "%,d track points without a time were left out.", pointsWithoutTime)));
        }
        List<Recording> recordings = new ArrayList<>();
        for (GpxTrack each : tracks) {
            recordings.add(recording(each, notes));
        }
        if (damagedAt != null) {
            Samples read = recordings.get(recordings.size() - 1).samples();
            notes.add(0, ReadNote.damage("damaged", "The file is damaged or cut short at " + damagedAt + ".", read));
        }
        if (tracks.size() == MOST_TRACKS && trackCount > track.number()) {
            notes.add(new ReadNote(
                    "many-tracks",
                    "The file holds " + trackCount + " tracks; those from the " + MOST_TRACKS
                            + "th with points on were read as one."));
        }
        if (!undeclaredPrefixes.isEmpty()) {
            notes.add(new ReadNote(
                    "undeclared-prefix",
                    "The file uses the prefix \"" + String.join("\", \"", undeclaredPrefixes)
                            + "\" without declaring it (xmlns); its elements were read by their names all the same."));
        }
        return new ReadResult(format, recordings, notes);
    }

    private Recording recording(GpxTrack each, List<ReadNote> notes) {
        List<ReadNote> own = new ArrayList<>();
        Samples samples = each.samples(own);
        String prefix = tracks.size() == 1 ? "" : "Track " + each.number() + ": ";
        own.forEach(note -> notes.add(new ReadNote(note.code(), prefix + note.text())));
        RecordingDevice device = creator == null || creator.isBlank()
                ? RecordingDevice.UNKNOWN
                : new RecordingDevice(
                        ReadNote.printable(creator.strip(), GpxWalk.LONGEST_TEXT), null, null, null, null);
        return new Recording(
                samples, each.timerEvents(), List.of(), null, device, each.sport(), tracks.indexOf(each), null);
    }

    private String whyEmpty() {
        if (pointsWithoutTime > 0) {
            return String.format(
                    Locale.ROOT,
                    "has %,d track points but not one time: it is a route, or its times were removed; "
                            + "export the recorded ride with times, or make a plan for it with wattledger plan (in the library, RacePlan)",
                    pointsWithoutTime);
        }
        if (damagedAt != null) {
            return "is a damaged GPX file with no track point before the damage (" + damagedAt
                    + "); export the ride again";
        }
        return "is a GPX file without a track point; export the recorded ride, or make a plan for a route with"
                + " wattledger plan (in the library, RacePlan)";
    }
}
