package io.github.wattledger.cli.profile;

import io.github.wattledger.pacing.JudgementLimit;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Gears;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rider.Trial;
import io.github.wattledger.rider.ZoneScheme;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlParseResult;

/**
 * Reads a rider profile, a TOML file ({@code docs/rider-profile.md}). Every key is known or a problem, every number has
 * its range, and all problems are reported together.
 */
public final class RiderFile {
    private static final String EXAMPLE = "rider-example.toml";

    private static final TomlText TEXT = new TomlText("profile", "a rider profile");

    private static final Bounds ZONE_FRACTION = new Bounds(0, 5);

    private static final List<String> TOP_KEYS = List.of(
            "mass_kg",
            "bike_mass_kg",
            "maximum_heart_rate_bpm",
            "thresholds",
            "critical_power",
            "long_bests",
            "race_days",
            "all_out",
            "trials",
            "birth_year",
            "power_zones",
            "heart_rate_zones",
            "gears",
            "road",
            "judgement");
    /** Keys that belong into a table of their own. */
    private static final Map<String, String> ELSEWHERE = Map.of(
            "threshold_power_w", "power_w under [[thresholds]]",
            "threshold_heart_rate_bpm", "heart_rate_bpm under [[thresholds]]",
            "drag_area_m2", "it under [road]",
            "rolling_resistance", "it under [road]",
            "chainrings", "it under [gears]",
            "cogs", "it under [gears]");

    private static final List<String> THRESHOLD_KEYS = List.of("from", "power_w", "heart_rate_bpm");
    private static final List<String> CRITICAL_POWER_KEYS = List.of("power_w", "w_prime_kj");
    private static final List<String> BEST_KEYS = List.of("day", "minutes", "power_w");
    private static final List<String> ZONE_KEYS = List.of("name", "from_fraction");
    private static final int SECONDS_PER_MINUTE = 60;
    private static final Bounds BEST_MINUTES = new Bounds(
            Bounds.LONG_BEST_SECONDS.low() / SECONDS_PER_MINUTE, Bounds.LONG_BEST_SECONDS.high() / SECONDS_PER_MINUTE);
    private static final Bounds TRIAL_MINUTES = new Bounds(
            Bounds.TRIAL_SECONDS.low() / SECONDS_PER_MINUTE, Bounds.TRIAL_SECONDS.high() / SECONDS_PER_MINUTE);

    /** The durations of trials whose best a season keeps of every ride, minutes. */
    private static final List<Double> KEPT_TRIAL_MINUTES = List.of(2.0, 3.0, 5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0);

    private static final List<String> GEAR_KEYS = List.of("chainrings", "cogs", "wheel_circumference_m");
    private static final List<String> ROAD_KEYS = List.of("drag_area_m2", "rolling_resistance");
    private static final List<String> LIMIT_KEYS =
            Arrays.stream(JudgementLimit.values()).map(JudgementLimit::key).toList();

    private RiderFile() {}

    /**
     * Reads a profile.
     *
     * @throws UnreadableProfileException with everything that is wrong with it
     */
    public static RiderProfile read(Path file) throws UnreadableProfileException {
        return parse(TEXT.read(file), file.toString());
    }

    /** A commented profile to begin with; its judgement and zones are the usual ones. */
    public static String example() {
        try (InputStream in = RiderFile.class.getResourceAsStream(EXAMPLE)) {
            if (in == null) {
                throw new AssertionError("the program lacks its " + EXAMPLE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError("the program cannot read its " + EXAMPLE, e);
        }
    }

    /**
     * Reads the text of a profile.
     *
     * @param file what to call it in messages
     * @throws UnreadableProfileException with everything that is wrong with it
     */
    static RiderProfile parse(String text, String file) throws UnreadableProfileException {
        Problems problems = new Problems(file);
        TomlParseResult parsed = TEXT.parse(text, problems);
        RiderProfile profile = profile(new ProfileTable(parsed, "", 1, problems, TOP_KEYS, ELSEWHERE));
        problems.throwIfAny();
        return profile;
    }

    private static RiderProfile profile(ProfileTable top) {
        Rider rider = Rider.UNKNOWN;
        rider = with(rider, top.number("mass_kg", Bounds.RIDER_MASS_KG), rider::withMassKg);
        rider = with(rider, top.number("bike_mass_kg", Bounds.BIKE_MASS_KG), rider::withBikeMassKg);
        rider = with(
                rider,
                top.number("maximum_heart_rate_bpm", Bounds.MAXIMUM_HEART_RATE_BPM),
                rider::withMaximumHeartRateBpm);
        rider = rider.withThresholds(thresholds(top))
                .withPowerZones(zones(top, "power_zones", rider.powerZones()))
                .withHeartRateZones(zones(top, "heart_rate_zones", rider.heartRateZones()));
        ProfileTable critical = top.table("critical_power", CRITICAL_POWER_KEYS);
        if (critical != null) {
            critical.require("power_w", "watts");
            critical.require("w_prime_kj", "the work above it that you have at once, kilojoules");
            Double powerW = critical.number("power_w", Bounds.CRITICAL_POWER_W);
            Double wPrimeKJ = critical.number("w_prime_kj", Bounds.W_PRIME_KJ);
            rider = powerW == null || wPrimeKJ == null ? rider : rider.withCriticalPower(powerW, wPrimeKJ);
        }
        rider = rider.withLongBests(longBests(top))
                .withRaceDays(top.days("race_days"))
                .withAllOutDays(top.days("all_out"))
                .withTrials(trials(top));
        Gears gears = gears(top);
        rider = gears == null ? rider : rider.withGears(gears);
        ProfileTable road = top.table("road", ROAD_KEYS);
        if (road != null) {
            rider = with(rider, road.number("drag_area_m2", Bounds.DRAG_AREA_M2), rider::withDragAreaM2);
            rider = with(
                    rider, road.number("rolling_resistance", Bounds.ROLLING_RESISTANCE), rider::withRollingResistance);
        }
        Integer birthYear = top.whole("birth_year", Bounds.BIRTH_YEAR);
        rider = birthYear == null ? rider : rider.withBirthYear(birthYear);
        return new RiderProfile(rider, limits(top));
    }

    private static Rider with(Rider rider, @Nullable Double value, DoubleFunction<Rider> change) {
        return value == null ? rider : change.apply(value);
    }

    private static ThresholdHistory thresholds(ProfileTable top) {
        List<ProfileTable> tables = top.tables("thresholds", THRESHOLD_KEYS);
        List<ThresholdHistory.Entry> entries = new ArrayList<>();
        for (ProfileTable table : tables == null ? List.<ProfileTable>of() : tables) {
            table.require("from", "the day from which it holds, such as 2026-03-01");
            if (!table.has("power_w") && !table.has("heart_rate_bpm")) {
                table.problem("expected power_w, heart_rate_bpm or both; they are missing");
            }
            LocalDate from = table.day("from");
            Double powerW = table.number("power_w", Bounds.THRESHOLD_POWER_W);
            Double heartRateBpm = table.number("heart_rate_bpm", Bounds.THRESHOLD_HEART_RATE_BPM);
            if (from != null && entries.stream().anyMatch(entry -> entry.from().equals(from))) {
                table.problem("from", from + " has thresholds already");
            } else if (from != null && (powerW != null || heartRateBpm != null)) {
                entries.add(new ThresholdHistory.Entry(from, powerW, heartRateBpm));
            }
        }
        entries.sort(Comparator.comparing(ThresholdHistory.Entry::from));
        return new ThresholdHistory(entries);
    }

    private static List<LongBest> longBests(ProfileTable top) {
        List<ProfileTable> tables = top.tables("long_bests", BEST_KEYS);
        List<LongBest> bests = new ArrayList<>();
        for (ProfileTable table : tables == null ? List.<ProfileTable>of() : tables) {
            table.require("day", "the day of the ride, such as 2026-05-17");
            table.require("minutes", "how long the effort took");
            table.require("power_w", "its mean power, watts");
            LocalDate day = table.day("day");
            Double minutes = table.number("minutes", BEST_MINUTES);
            Double powerW = table.number("power_w", Bounds.THRESHOLD_POWER_W);
            if (day != null && minutes != null && powerW != null) {
                bests.add(new LongBest((int) Math.round(minutes * SECONDS_PER_MINUTE), powerW, day));
            }
        }
        return bests;
    }

    private static List<Trial> trials(ProfileTable top) {
        List<ProfileTable> tables = top.tables("trials", BEST_KEYS);
        List<Trial> trials = new ArrayList<>();
        for (ProfileTable table : tables == null ? List.<ProfileTable>of() : tables) {
            table.require("day", "the day of the ride, such as 2026-05-17");
            table.require("minutes", "how long the effort took");
            LocalDate day = table.day("day");
            Double minutes = table.number("minutes", TRIAL_MINUTES);
            Double powerW = table.number("power_w", Bounds.TRIAL_POWER_W);
            if (minutes != null && !table.has("power_w") && !KEPT_TRIAL_MINUTES.contains(minutes)) {
                table.problem(
                        "minutes",
                        "expected 2, 3, 5, 8, 10, 12, 15, 20 or 30 where power_w is left out, so that a season's store"
                                + " knows the power; found " + Decimals.of(minutes, 1));
            } else if (day != null && minutes != null && (powerW != null || !table.has("power_w"))) {
                trials.add(new Trial(day, (int) Math.round(minutes * SECONDS_PER_MINUTE), powerW));
            }
        }
        return trials;
    }

    private static ZoneScheme zones(ProfileTable top, String key, ZoneScheme usual) {
        List<ProfileTable> tables = top.tables(key, ZONE_KEYS);
        if (tables == null) {
            return usual;
        }
        List<ZoneScheme.Zone> zones = new ArrayList<>();
        double above = 0;
        for (ProfileTable table : tables) {
            table.require("name", "words in quotes");
            table.require("from_fraction", "the zone's lower bound over the threshold");
            String name = table.words("name");
            Double from = table.number("from_fraction", ZONE_FRACTION);
            boolean isFirst = table == tables.get(0);
            if (from != null && isFirst && from != 0) {
                table.problem("from_fraction", "expected 0 in the first zone, so that every reading has a zone");
            } else if (from != null && !isFirst && from <= above) {
                table.problem("from_fraction", "expected more than in the zone before");
            } else if (name != null && from != null) {
                zones.add(new ZoneScheme.Zone(name, from));
            }
            above = from == null ? above : from;
        }
        return zones.size() == tables.size() ? new ZoneScheme(zones) : usual;
    }

    private static @Nullable Gears gears(ProfileTable top) {
        ProfileTable table = top.table("gears", GEAR_KEYS);
        if (table == null) {
            return null;
        }
        table.require("chainrings", "the teeth of each, such as [46, 30]");
        table.require("cogs", "the teeth of each, such as [11, 13, 15]");
        table.require("wheel_circumference_m", "such as 2.19");
        List<Integer> chainrings = table.wholes("chainrings", Bounds.CHAINRING_TEETH);
        List<Integer> cogs = table.wholes("cogs", Bounds.COG_TEETH);
        Double circumferenceM = table.number("wheel_circumference_m", Bounds.WHEEL_CIRCUMFERENCE_M);
        return chainrings == null || cogs == null || circumferenceM == null
                ? null
                : new Gears(chainrings, cogs, circumferenceM);
    }

    private static JudgementLimits limits(ProfileTable top) {
        JudgementLimits limits = JudgementLimits.USUAL;
        ProfileTable table = top.table("judgement", LIMIT_KEYS);
        if (table == null) {
            return limits;
        }
        for (JudgementLimit limit : JudgementLimit.values()) {
            Double value = value(table, limit);
            limits = value == null ? limits : limits.with(limit, value);
        }
        return limits;
    }

    private static @Nullable Double value(ProfileTable table, JudgementLimit limit) {
        if (!limit.isWhole()) {
            return table.number(limit.key(), limit.bounds());
        }
        Integer whole = table.whole(limit.key(), limit.bounds());
        return whole == null ? null : whole.doubleValue();
    }
}
