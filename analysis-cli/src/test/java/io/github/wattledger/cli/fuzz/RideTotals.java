package io.github.wattledger.cli.fuzz;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tools.jackson.databind.JsonNode;

/**
 * What holds of the numbers of any ride, by their definitions and by what a bicycle can do. The limits of speed and of
 * altitude are those that docs/methods.md names for the cleaning.
 */
final class RideTotals {
    /** 130 km/h. */
    private static final double TOP_SPEED_MPS = 130 / 3.6;

    /** Metres by which an altitude can change in a second. */
    private static final double TOP_VERTICAL_MPS = 8;

    /** Numbers are written with three to six decimals. */
    private static final double ROUNDING = 0.002;

    private final Promises promises;

    RideTotals(Promises promises) {
        this.promises = promises;
    }

    private static double number(JsonNode node) {
        return node.isNumber() ? node.asDouble() : Double.NaN;
    }

    /** Whether a number is at most another one; true where one of them is missing. */
    private void atMost(double number, double limit, String what) {
        boolean isAbove = number > limit + Math.max(ROUNDING, 1e-6 * Math.abs(limit));
        promises.expect(!isAbove, what + ": " + number + " over " + limit);
    }

    /** The totals of a review as JSON. */
    void review(JsonNode review) {
        JsonNode load = review.path("load");
        double elapsed = number(load.path("elapsedSeconds"));
        double timer = number(load.path("timerSeconds"));
        double moving = number(load.path("movingSeconds"));
        atMost(timer, elapsed, "timer over elapsed seconds");
        atMost(moving + number(load.path("stoppedSeconds")), timer, "moving and stopped over timer seconds");
        atMost(number(review.path("quality").path("recordedSeconds")), elapsed, "recorded over elapsed seconds");
        atMost(number(load.path("distanceM")), TOP_SPEED_MPS * (elapsed + 1), "distance over top speed times time");
        atMost(number(load.path("ascentM")), TOP_VERTICAL_MPS * (elapsed + 1), "ascent over what the time allows");
        atMost(number(load.path("averageHeartRateBpm")), number(load.path("maximumHeartRateBpm")), "mean heart rate");
        atMost(number(load.path("maximumHeartRateBpm")), 255, "heart rate");
        power(review, timer);
        zones(load.path("powerZones"), timer);
        zones(load.path("heartRateZones"), timer);
        pacing(review.path("pacing"), elapsed);
    }

    private void power(JsonNode review, double timer) {
        JsonNode load = review.path("load");
        double highest = Double.NaN;
        double lastJoules = 0;
        for (JsonNode best : review.path("curve")) {
            double watts = number(best.path("watts"));
            if (Double.isNaN(watts)) {
                continue;
            }
            highest = Double.isNaN(highest) ? watts : highest;
            double joules = watts * number(best.path("seconds"));
            atMost(watts, highest, "a best over a longer time is higher than that of a second");
            atMost(lastJoules, joules + 0.01 * number(best.path("seconds")), "less work in a longer best");
            lastJoules = joules;
        }
        atMost(number(load.path("averagePowerW")), highest, "mean power over the highest");
        atMost(number(load.path("normalizedPowerW")), highest, "normalized power over the highest");
        atMost(number(load.path("workKJ")), highest * timer / 1000, "work over the highest power times time");
    }

    private void zones(JsonNode zones, double timer) {
        double sum = 0;
        for (JsonNode zone : zones) {
            sum += number(zone.path("seconds"));
        }
        atMost(sum, timer, "time in zones over timer seconds");
    }

    private void pacing(JsonNode pacing, double elapsed) {
        JsonNode ledger = pacing.path("ledger");
        double moving = number(ledger.path("movingMinutes"));
        double stopped = number(ledger.path("stoppedMinutes"));
        for (JsonNode finding : pacing.path("findings")) {
            atMost(number(finding.path("startSeconds")), number(finding.path("endSeconds")), "a finding's start");
            atMost(number(finding.path("endSeconds")), elapsed, "a finding's end");
            atMost(number(finding.path("startM")), number(finding.path("endM")), "a finding's way");
            JsonNode cost = finding.path("costMinutes");
            atMost(number(cost.path("low")), number(cost.path("high")), "the ends of a cost");
            // A stop costs up to 12 s more than it lasts.
            atMost(number(cost.path("high")), moving + 2 * stopped + 1, "the cost of " + finding.path("kind"));
        }
        for (JsonNode entry : ledger.path("entries")) {
            atMost(number(entry.path("minutesLow")), number(entry.path("minutesHigh")), "the ends of a ledger's line");
        }
    }

    /**
     * The cleaned seconds against the totals that were made of them.
     *
     * @param csv the review as a table: one row a second
     */
    void seconds(String csv, JsonNode review) {
        List<String> rows = csv.lines().toList();
        List<String> head = Arrays.asList(rows.get(0).split(",", -1));
        JsonNode load = review.path("load");
        atMost(rows.size() - 1, number(load.path("elapsedSeconds")), "rows");
        atMost(number(load.path("elapsedSeconds")), rows.size() - 1, "rows missing");
        List<Double> altitude = column(rows, head.indexOf("altitude_m"));
        double risen = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < altitude.size(); i++) {
            risen += i == 0 ? 0 : Math.max(0, altitude.get(i) - altitude.get(i - 1));
            low = Math.min(low, altitude.get(i));
            high = Math.max(high, altitude.get(i));
        }
        double ascent = number(load.path("ascentM"));
        // Rises of the altitude of a few metres do not count, hence the sum of all rises is the most.
        atMost(ascent, risen + 0.01 * altitude.size(), "ascent over all rises of the altitude");
        atMost(ascent, (high - low) * Math.ceil(altitude.size() / 2.0), "ascent over what the altitudes allow");
        List<Double> distance = column(rows, head.indexOf("distance_m"));
        for (int i = 1; i < distance.size(); i++) {
            atMost(distance.get(i - 1), distance.get(i), "the distance falls");
        }
        if (!distance.isEmpty()) {
            double covered = distance.get(distance.size() - 1) - distance.get(0);
            atMost(number(load.path("distanceM")), covered + 0.1, "distance over that of the seconds");
        }
    }

    private static List<Double> column(List<String> rows, int column) {
        List<Double> values = new ArrayList<>();
        for (String row : rows.subList(1, rows.size())) {
            String[] cells = row.split(",", -1);
            if (column >= 0 && column < cells.length && !cells[column].isEmpty()) {
                values.add(Double.valueOf(cells[column]));
            }
        }
        return values;
    }
}
