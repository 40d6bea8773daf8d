package io.github.wattledger.simulation;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** Writes a simulated road as a GPX course without times, as an organiser would publish it. */
final class CourseFileWriter {
    private static final double SPACING_M = 75;

    private CourseFileWriter() {}

    /** A named place of a course. */
    record Place(String name, double atM) {}

    /** The race from start line to finish; its two feed stops are named. */
    static byte[] ebbwood() {
        return gpx(
                "Ebbwood 165",
                EbbwoodCourse.race(),
                List.of(
                        new Place("First feed", EbbwoodCourse.FIRST_FEED_M),
                        new Place("Second feed", EbbwoodCourse.SECOND_FEED_M)));
    }

    private static byte[] gpx(String name, Course course, List<Place> places) {
        StringBuilder gpx = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
                .append("<gpx version=\"1.1\" creator=\"Wattledger ride simulator\"")
                .append(" xmlns=\"http://www.topografix.com/GPX/1/1\">\n");
        for (Place place : places) {
            point(gpx, "wpt", course, place.atM, "<name>" + place.name + "</name>");
        }
        gpx.append("<trk><name>").append(name).append("</name><trkseg>\n");
        int steps = (int) StrictMath.ceil(course.lengthM() / SPACING_M);
        for (int i = 0; i <= steps; i++) {
            point(gpx, "trkpt", course, StrictMath.min(course.lengthM() - 0.01, i * SPACING_M), "");
        }
        return gpx.append("</trkseg></trk>\n</gpx>\n").toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void point(StringBuilder gpx, String element, Course course, double atM, String inner) {
        gpx.append(String.format(
                        Locale.ROOT,
                        "<%s lat=\"%.6f\" lon=\"%.6f\"><ele>%.1f</ele>%s</%s>%n",
                        element,
                        course.latitudeAt(atM),
                        course.longitudeAt(atM),
                        course.altitudeAt(atM),
                        inner,
                        element)
                .replace("\r", ""));
    }
}
