package io.github.wattledger.course;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * A climb of a route, by the rules of {@link Climb}.
 *
 * @param fromM distance of its foot, metres from the start
 * @param toM distance of its top, metres from the start
 * @param gainM altitude of the top over the foot, metres, above 0
 */
public record RouteClimb(double fromM, double toM, double gainM) implements Serializable {
    /** Length, metres. */
    public double lengthM() {
        return toM - fromM;
    }

    /** Gain over length, rise over run. */
    public double meanGrade() {
        return gainM / lengthM();
    }

    static List<RouteClimb> of(Course course) {
        List<RouteClimb> climbs = new ArrayList<>();
        Climb.Span span = Climb.next(course, 0);
        while (span != null) {
            if (span.isClimb(course)) {
                climbs.add(new RouteClimb(
                        course.distanceM(span.start()),
                        course.distanceM(span.end()),
                        course.altitudeM(span.end()) - course.altitudeM(span.start())));
            }
            span = Climb.next(course, span.end());
        }
        return climbs;
    }
}
