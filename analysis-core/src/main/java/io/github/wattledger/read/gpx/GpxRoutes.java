package io.github.wattledger.read.gpx;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.RouteBuilder;
import io.github.wattledger.read.RouteResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.RouteLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** Routes and tracks of a GPX document, without their times. What comes before a damage is read. */
public final class GpxRoutes {
    private static final int MOST_ROUTES = 200;
    private static final int MOST_PLACES = 2000;

    private final int maximumPoints;
    private final List<RouteBuilder> routes = new ArrayList<>();
    private final List<Boolean> recorded = new ArrayList<>();
    private final List<Place> places = new ArrayList<>();
    private @Nullable GpxPoint point;
    private @Nullable String pointName;
    private int depthInRoute;
    private boolean inRoute;
    private boolean hasSensor;
    private int pointCount;
    private int badValues;
    private @Nullable String damagedAt;
    private @Nullable ReadNote encodingNote;

    private record Place(String name, GpxPoint point) {}

    private GpxRoutes(int maximumPoints) {
        this.maximumPoints = maximumPoints;
    }

    /**
     * Reads a document.
     *
     * @param content the whole content; not changed
     * @param maximumPoints most points to take
     * @param cancellation when to end early
     * @throws UnreadableRideException when it holds no route; its message is one line without the file's name
     */
    public static RouteResult read(byte[] content, int maximumPoints, Cancellation cancellation)
            throws UnreadableRideException {
        GpxRoutes reading = new GpxRoutes(maximumPoints);
        GpxWalk walk = GpxWalk.through(content, cancellation, reading.elements());
        reading.encodingNote = walk.encodingNote();
        reading.damagedAt = walk.damagedAt();
        return reading.result(ContentDigest.sha256(content));
    }

    private GpxWalk.Elements elements() {
        return new GpxWalk.Elements() {
            @Override
            public void start(String name, XMLStreamReader reader) throws UnreadableRideException {
                begin(name, reader);
            }

            @Override
            public void end(String name, String text) {
                finish(name, text);
            }
        };
    }

    private void begin(String local, XMLStreamReader reader) throws UnreadableRideException {
        depthInRoute += inRoute ? 1 : 0;
        switch (local) {
            case "trk", "rte" -> {
                inRoute = true;
                depthInRoute = 0;
                hasSensor = false;
                if (routes.size() < MOST_ROUTES) {
                    routes.add(new RouteBuilder());
                    recorded.add(false);
                }
            }
            case "trkpt", "rtept", "wpt" -> {
                if (pointCount++ == maximumPoints) {
                    throw new UnreadableRideException(
                            Reason.TOO_LARGE,
                            String.format(
                                    Locale.ROOT,
                                    "holds more than %,d points, the most that is read; split it first",
                                    maximumPoints));
                }
                point = new GpxPoint(reader.getAttributeValue(null, "lat"), reader.getAttributeValue(null, "lon"));
                pointName = null;
            }
            default -> {}
        }
    }

    private void finish(String local, String text) {
        switch (local) {
            case "trkpt", "rtept", "wpt" -> {
                if (point != null) {
                    take(local, point);
                }
                point = null;
            }
            case "trk", "rte" -> {
                inRoute = false;
                if (!recorded.isEmpty()) {
                    recorded.set(recorded.size() - 1, hasSensor);
                }
            }
            case "name" -> {
                if (point != null) {
                    pointName = text;
                } else if (inRoute && depthInRoute == 1) {
                    routes.get(routes.size() - 1).name(text);
                }
            }
            default -> {
                if (point != null) {
                    point.set(local.toLowerCase(Locale.ROOT), text.strip());
                }
            }
        }
        depthInRoute -= inRoute ? 1 : 0;
    }

    private void take(String element, GpxPoint complete) {
        badValues += complete.badValues();
        String named = pointName;
        if (named != null && !named.isBlank() && places.size() < MOST_PLACES && !element.equals("trkpt")) {
            places.add(new Place(named, complete));
        }
        if (!element.equals("wpt") && !routes.isEmpty()) {
            hasSensor |= !Double.isNaN(complete.get(Channel.POWER)) || !Double.isNaN(complete.get(Channel.HEART_RATE));
            routes.get(routes.size() - 1)
                    .add(
                            complete.get(Channel.LATITUDE),
                            complete.get(Channel.LONGITUDE),
                            complete.get(Channel.ALTITUDE),
                            Double.NaN);
        }
    }

    private RouteResult result(String sha256) throws UnreadableRideException {
        List<RouteLine> lines = new ArrayList<>();
        int points = 0;
        for (int i = 0; i < routes.size(); i++) {
            RouteBuilder route = routes.get(i);
            points += route.size();
            places.forEach(place ->
                    route.addPlace(place.name, place.point.get(Channel.LATITUDE), place.point.get(Channel.LONGITUDE)));
            RouteLine line = route.build(recorded.get(i));
            if (line != null) {
                lines.add(line);
            }
        }
        if (lines.isEmpty()) {
            throw empty();
        }
        return new RouteResult("GPX", sha256, lines, notes(points));
    }

    private UnreadableRideException empty() {
        return damagedAt == null
                ? new UnreadableRideException(
                        Reason.NOT_A_RECORDING,
                        "is a GPX file without a route or track of two points or more; export the course with its line")
                : new UnreadableRideException(
                        Reason.DAMAGED,
                        "is a damaged GPX file with no route before the damage (" + damagedAt
                                + "); export the course again");
    }

    private List<ReadNote> notes(int points) {
        List<ReadNote> notes = new ArrayList<>();
        if (damagedAt != null) {
            notes.add(new ReadNote(
                    "damaged",
                    String.format(
                            Locale.ROOT,
                            "The file is damaged or cut short at %s. The %,d points up to there were read; the course may"
                                    + " be longer.",
                            damagedAt,
                            points)));
        }
        if (encodingNote != null) {
            notes.add(encodingNote);
        }
        if (badValues > 0) {
            notes.add(new ReadNote(
                    "bad-values",
                    String.format(
                            Locale.ROOT, "%,d values are no numbers, or no positions; they are missing.", badValues)));
        }
        return notes;
    }
}
