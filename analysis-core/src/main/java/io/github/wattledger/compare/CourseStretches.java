package io.github.wattledger.compare;

import io.github.wattledger.course.Course;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Cuts a course into climbs, descents and the rest, none of them too short to be worth a line. */
public final class CourseStretches {
    /** A stretch at least this steep is a climb or a descent, rise over run. Own choice. */
    private static final double LEAST_GRADE = 0.02;

    /** A stretch is at least this long, metres, or a sixtieth of the course where that is longer. Own choice. */
    private static final double LEAST_LENGTH_M = 1000;

    private static final double LEAST_FRACTION = 1 / 60.0;

    /** A longer stretch is cut into equal parts, metres, or a tenth of the course where that is longer. Own choice. */
    private static final double LONGEST_M = 5000;

    private static final double LONGEST_FRACTION = 0.1;

    /** The grade of a piece is that of the way from 200 m before it to 200 m after it: rollers are no climbs. */
    private static final int REACH = 2;

    /**
     * A stretch between two points of the course.
     *
     * @param ground what kind of road it is
     * @param from the point at which it begins, counted from the start of the course
     * @param to the point at which it ends
     * @param meanGrade rise over run, or null where it is not known
     */
    public record Span(
            Ground ground, int from, int to, @Nullable Double meanGrade) {
        /** How many steps it is long. */
        int pieces() {
            return to - from;
        }
    }

    private final @Nullable Course course;
    private final double startM;
    private final double stepM;

    private CourseStretches(@Nullable Course course, double startM, double stepM) {
        this.course = course;
        this.startM = startM;
        this.stepM = stepM;
    }

    /**
     * The stretches from one point to another, in order: each begins where the one before it ends.
     *
     * @param course the course, or null where there is no altitude
     * @param startM distance of point 0, metres from the start of the recording
     * @param stepM distance between two points, metres
     * @param first the first point
     * @param last the last point, beyond the first
     */
    public static List<Span> of(@Nullable Course course, double startM, double stepM, int first, int last) {
        return new CourseStretches(course, startM, stepM).between(first, last);
    }

    /**
     * Metres climbed in a stretch on pieces as steep as a climb: what its mean grade hides. A steady rise of less counts for
     * nothing.
     *
     * @param course the course
     * @param startM distance of point 0, metres from the start of the recording
     * @param stepM distance between two points, metres
     * @param stretch a stretch of it, as {@link #of} gives it
     */
    public static double climbedM(Course course, double startM, double stepM, Span stretch) {
        CourseStretches stretches = new CourseStretches(course, startM, stepM);
        double climbedM = 0;
        for (int piece = stretch.from; piece < stretch.to; piece++) {
            Double grade = stretches.grade(piece, piece + 1);
            climbedM += grade != null && grade >= LEAST_GRADE ? grade * stepM : 0;
        }
        return climbedM;
    }

    private List<Span> between(int first, int last) {
        double lengthM = (last - first) * stepM;
        int least = (int) Math.ceil(Math.max(LEAST_LENGTH_M, lengthM * LEAST_FRACTION) / stepM);
        int longest = (int) Math.ceil(Math.max(LONGEST_M, lengthM * LONGEST_FRACTION) / stepM);
        List<Span> spans = new ArrayList<>();
        for (int piece = first; piece < last; piece++) {
            Span own = span(piece, piece + 1);
            Span wide = span(Math.max(first, piece - REACH), Math.min(last, piece + 1 + REACH));
            add(spans, new Span(wide.ground, own.from, own.to, own.meanGrade));
        }
        while (spans.size() > 1) {
            int shortest = shortest(spans);
            if (spans.get(shortest).pieces() >= least) {
                break;
            }
            merge(spans, shortest);
        }
        return cut(spans, longest);
    }

    private void add(List<Span> spans, Span next) {
        Span before = spans.isEmpty() ? null : spans.get(spans.size() - 1);
        if (before != null && before.ground == next.ground) {
            spans.set(spans.size() - 1, new Span(next.ground, before.from, next.to, grade(before.from, next.to)));
        } else {
            spans.add(next);
        }
    }

    private static int shortest(List<Span> spans) {
        int shortest = 0;
        for (int i = 1; i < spans.size(); i++) {
            shortest = spans.get(i).pieces() < spans.get(shortest).pieces() ? i : shortest;
        }
        return shortest;
    }

    /** Joins a stretch to that neighbour whose grade is the nearer one, and both to neighbours of the same ground. */
    private void merge(List<Span> spans, int which) {
        boolean toNext = which == 0
                || (which < spans.size() - 1
                        && steepnessApart(spans, which, which + 1) < steepnessApart(spans, which, which - 1));
        int low = toNext ? which : which - 1;
        Span joined = span(spans.get(low).from, spans.get(low + 1).to);
        List<Span> result = new ArrayList<>();
        for (int i = 0; i < spans.size(); i++) {
            if (i == low) {
                add(result, joined);
            } else if (i != low + 1) {
                add(result, spans.get(i));
            }
        }
        spans.clear();
        spans.addAll(result);
    }

    private static double steepnessApart(List<Span> spans, int one, int other) {
        Double a = spans.get(one).meanGrade;
        Double b = spans.get(other).meanGrade;
        return a == null || b == null ? Double.POSITIVE_INFINITY : Math.abs(a - b);
    }

    private List<Span> cut(List<Span> spans, int longest) {
        List<Span> parts = new ArrayList<>();
        for (Span span : spans) {
            int count = (span.pieces() + longest - 1) / longest;
            for (int part = 0; part < count; part++) {
                int from = span.from + span.pieces() * part / count;
                int to = span.from + span.pieces() * (part + 1) / count;
                parts.add(new Span(span.ground, from, to, grade(from, to)));
            }
        }
        return parts;
    }

    private Span span(int from, int to) {
        Double grade = grade(from, to);
        Ground ground = Ground.FLAT;
        if (grade == null) {
            ground = Ground.UNKNOWN;
        } else if (grade >= LEAST_GRADE) {
            ground = Ground.CLIMB;
        } else if (grade <= -LEAST_GRADE) {
            ground = Ground.DESCENT;
        }
        return new Span(ground, from, to, grade);
    }

    private @Nullable Double grade(int from, int to) {
        if (course == null) {
            return null;
        }
        double grade = course.meanGradeBetweenM(startM + from * stepM, startM + to * stepM);
        return Double.isNaN(grade) ? null : Double.valueOf(grade);
    }
}
