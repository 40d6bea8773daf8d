package io.github.wattledger.read.gpx;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * Walks through a GPX document once. Namespaces are left alone: many files use a prefix that they never declare, and
 * what an element holds is told by its local name. Document types are refused, and with them every entity of one's own.
 */
final class GpxParser {
    private static final int LONGEST_TEXT = 200;

    private final GpxTrack track;
    private final Set<String> declaredPrefixes = new LinkedHashSet<>(Set.of("xml", "xmlns"));
    private final Set<String> undeclaredPrefixes = new TreeSet<>();
    private final List<String> sports = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();

    private @Nullable String creator;
    private @Nullable GpxPoint point;
    private boolean inTrack;
    private boolean inSegment;
    private @Nullable String damagedAt;
    private int depthInTrack;

    GpxParser(int maximumSamples) {
        track = new GpxTrack(maximumSamples);
    }

    /** Takes all that comes before the end or the damage. */
    void parse(byte[] content) throws UnreadableRideException {
        XMLStreamReader reader = null;
        try {
            reader = factory().createXMLStreamReader(new ByteArrayInputStream(content));
            while (reader.hasNext()) {
                accept(reader, reader.next());
            }
        } catch (XMLStreamException e) {
            damagedAt = "line "
                    + (e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNumber()));
        } catch (IndexOutOfBoundsException | NullPointerException | ClassCastException e) {
            // The JDK's parser stumbles so over some broken documents.
            damagedAt = "line "
                    + (reader == null ? 1 : Math.max(1, reader.getLocation().getLineNumber()));
        }
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, false);
        return factory;
    }

    private void accept(XMLStreamReader reader, int event) throws UnreadableRideException {
        switch (event) {
            case XMLStreamConstants.START_ELEMENT -> start(reader);
            case XMLStreamConstants.END_ELEMENT -> end(localName(reader.getLocalName()));
            case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
                if (text.length() < LONGEST_TEXT) {
                    String more = reader.getText();
                    text.append(more, 0, Math.min(more.length(), LONGEST_TEXT - text.length()));
                }
            }
            case XMLStreamConstants.DTD ->
                throw new UnreadableRideException(
                        "declares a document type (line " + reader.getLocation().getLineNumber()
                                + "), which no GPX file needs and which can be used for attacks; remove that declaration");
            default -> {}
        }
    }

    private void start(XMLStreamReader reader) throws UnreadableRideException {
        String local = localName(reader.getLocalName());
        notePrefixes(reader);
        text.setLength(0);
        depthInTrack += inTrack ? 1 : 0;
        switch (local) {
            case "gpx" -> creator = reader.getAttributeValue(null, "creator");
            case "trk" -> {
                inTrack = true;
                depthInTrack = 0;
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

    private void end(String local) throws UnreadableRideException {
        switch (local) {
            case "trkpt" -> {
                if (point != null) {
                    track.add(point);
                    point = null;
                }
            }
            case "trkseg" -> inSegment = false;
            case "trk" -> inTrack = false;
            case "type" -> {
                if (inTrack && depthInTrack == 1 && !text.isEmpty()) {
                    sports.add(text.toString().strip());
                }
            }
            default -> {
                if (point != null) {
                    point.set(local.toLowerCase(Locale.ROOT), text.toString().strip());
                }
            }
        }
        depthInTrack -= inTrack ? 1 : 0;
        text.setLength(0);
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
        if (colon > 0 && undeclaredPrefixes.size() < 5 && !declaredPrefixes.contains(name.substring(0, colon))) {
            undeclaredPrefixes.add(name.substring(0, colon));
        }
    }

    /** Without namespaces, the parser gives the prefix as a part of the name. */
    private static String localName(String name) {
        return name.substring(name.indexOf(':') + 1);
    }

    /** The one recording. */
    ReadResult result(String format) throws UnreadableRideException {
        if (track.sampleCount() == 0) {
            throw new UnreadableRideException(whyEmpty());
        }
        List<ReadNote> notes = new ArrayList<>();
        Samples samples = track.samples(notes);
        if (damagedAt != null) {
            notes.add(0, ReadNote.damage("damaged", "The file is damaged or cut short at " + damagedAt + ".", samples));
        }
        if (!undeclaredPrefixes.isEmpty()) {
            notes.add(new ReadNote(
                    "undeclared-prefix",
                    "The file uses the prefix \"" + String.join("\", \"", undeclaredPrefixes)
                            + "\" without declaring it (xmlns); its elements were read by their names all the same."));
        }
        RecordingDevice device = creator == null || creator.isBlank()
                ? RecordingDevice.UNKNOWN
                : new RecordingDevice(creator.strip(), null, null, null, null);
        Recording recording =
                new Recording(samples, track.timerEvents(), List.of(), null, device, sport(notes), 0, null);
        return new ReadResult(format, List.of(recording), notes);
    }

    private @Nullable String sport(List<ReadNote> notes) {
        Set<String> known = new LinkedHashSet<>();
        for (String type : sports) {
            String sport = sportOf(type.toLowerCase(Locale.ROOT));
            if (sport != null) {
                known.add(sport);
            }
        }
        if (known.size() > 1) {
            notes.add(new ReadNote(
                    "several-sports",
                    "The tracks are of different sports (" + String.join(", ", known) + ") and were read as one."));
            return null;
        }
        return known.isEmpty() ? null : known.iterator().next();
    }

    private static @Nullable String sportOf(String type) {
        if (containsAny(type, "cycl", "bik", "ride", "gravel", "mtb")) {
            return "cycling";
        }
        if (containsAny(type, "run", "jog")) {
            return "running";
        }
        if (containsAny(type, "walk", "hik")) {
            return "walking";
        }
        return containsAny(type, "swim") ? "swimming" : null;
    }

    private static boolean containsAny(String type, String... parts) {
        for (String part : parts) {
            if (type.contains(part)) {
                return true;
            }
        }
        return false;
    }

    private String whyEmpty() {
        if (track.pointsWithoutTime() > 0) {
            return String.format(
                    Locale.ROOT,
                    "has %,d track points but not one time: it is a route, or its times were removed; "
                            + "export the recorded ride with times",
                    track.pointsWithoutTime());
        }
        if (damagedAt != null) {
            return "is a damaged GPX file with no track point before the damage (" + damagedAt
                    + "); export the ride again";
        }
        return "is a GPX file without a track point; export the recorded ride, not a route or waypoints";
    }
}
