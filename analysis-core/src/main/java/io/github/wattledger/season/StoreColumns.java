package io.github.wattledger.season;

import static io.github.wattledger.season.RowColumn.large;
import static io.github.wattledger.season.RowColumn.real;
import static io.github.wattledger.season.RowColumn.required;
import static io.github.wattledger.season.RowColumn.text;
import static io.github.wattledger.season.RowColumn.whole;

import io.github.wattledger.history.RideTraits;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.intake.RideSetting;
import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.HeartLine;
import io.github.wattledger.power.RidingBest;
import io.github.wattledger.rider.RideNotes;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The columns of the table {@code ride}, each declared once. The schema, the insert, the update of a judgement and the
 * reading of a row follow these lists.
 */
final class StoreColumns {
    private static final RowColumn<StoredRide, String> SHA256 =
            required(text("sha256", ride -> ride.key().sha256()));
    private static final RowColumn<StoredRide, Integer> SESSION_INDEX =
            required(whole("session_index", ride -> ride.key().sessionIndex()));
    private static final RowColumn<StoredRide, Integer> ANALYSIS_VERSION =
            required(whole("analysis_version", ride -> StoreDatabase.ANALYSIS_VERSION));
    private static final RowColumn<StoredRide, String> FORMAT = required(text("format", StoredRide::format));
    private static final RowColumn<StoredRide, String> DEVICE =
            text("device", ride -> ride.device().name());
    private static final RowColumn<StoredRide, Double> DEVICE_THRESHOLD_POWER =
            real("device_threshold_power_w", ride -> ride.device().thresholdPowerW());
    private static final RowColumn<StoredRide, Double> DEVICE_THRESHOLD_HEART_RATE =
            real("device_threshold_heart_rate_bpm", ride -> ride.device().thresholdHeartRateBpm());
    private static final RowColumn<StoredRide, Double> DEVICE_RIDER_MASS =
            real("device_rider_mass_kg", ride -> ride.device().riderMassKg());
    private static final RowColumn<StoredRide, Long> START =
            required(large("start_epoch_s", ride -> ride.start().getEpochSecond()));
    private static final RowColumn<StoredRide, Integer> UTC_OFFSET =
            whole("utc_offset_s", StoredRide::utcOffsetSeconds);
    private static final RowColumn<StoredRide, Integer> CHANNEL_COUNT =
            required(whole("channel_count", StoredRide::channelCount));

    /** What the ride is, and what the recording device knew. */
    static final List<RowColumn<StoredRide, ?>> OF_RIDE = List.of(
            SHA256,
            SESSION_INDEX,
            ANALYSIS_VERSION,
            FORMAT,
            DEVICE,
            DEVICE_THRESHOLD_POWER,
            DEVICE_THRESHOLD_HEART_RATE,
            DEVICE_RIDER_MASS,
            START,
            UTC_OFFSET,
            CHANNEL_COUNT);

    private static final RowColumn<StoredRide, Integer> LAP_COUNT = required(whole("lap_count", StoredRide::lapCount));

    private static final RowColumn<StoredRide, Double> DEVICE_MAXIMUM_HEART_RATE =
            real("device_maximum_heart_rate_bpm", ride -> ride.device().maximumHeartRateBpm());
    private static final RowColumn<StoredRide, Integer> IS_INDOOR_SPORT =
            whole("is_indoor_sport", ride -> ride.setting().isIndoorSport() ? 1 : 0);
    private static final RowColumn<StoredRide, Integer> HAS_POSITIONS =
            whole("has_positions", ride -> ride.setting().hasPositions() ? 1 : 0);
    private static final RowColumn<StoredRide, Integer> SPORTS =
            whole("sports", ride -> ride.setting().sports());

    /** Columns of the ride that came later, at the end of the table. */
    static final List<RowColumn<StoredRide, ?>> LATER_OF_RIDE =
            List.of(LAP_COUNT, DEVICE_MAXIMUM_HEART_RATE, IS_INDOOR_SPORT, HAS_POSITIONS, SPORTS);

    private static final RowColumn<StoredRide, Long> SECONDS_SUM = large("series_sum", ride -> null);
    private static final RowColumn<StoredRide, Long> CHECK_SUM = large("check_sum", ride -> null);

    /** The check sums, which {@link StoreSums} writes once all rows of the ride are there. */
    static final List<RowColumn<StoredRide, Long>> OF_SUMS = List.of(SECONDS_SUM, CHECK_SUM);

    private static final RowColumn<RideNumbers, Integer> POWER_SECONDS =
            required(whole("power_s", RideNumbers::powerSeconds));

    /** The columns of the times, which are whole seconds and never missing. */
    private static final Map<LoadNumber, RowColumn<RideNumbers, Integer>> TIMES = new EnumMap<>(LoadNumber.class);

    /** The columns of all other kept numbers. */
    private static final Map<LoadNumber, RowColumn<RideNumbers, Double>> OTHERS = new EnumMap<>(LoadNumber.class);

    static {
        for (LoadNumber number : RideNumbers.KEPT) {
            if (number.quantity() == LoadNumber.Quantity.TIME) {
                TIMES.put(number, required(whole(name(number), numbers -> seconds(numbers.of(number)))));
            } else {
                OTHERS.put(number, real(name(number), numbers -> numbers.of(number)));
            }
        }
    }

    /** The numbers of the load that need no threshold. */
    static final List<RowColumn<RideNumbers, ?>> OF_NUMBERS = ofNumbers();

    private static final RowColumn<Judge.Judged, String> JUDGEMENT_KEY =
            required(text("judgement_key", Judge.Judged::key));
    private static final RowColumn<Judge.Judged, Double> THRESHOLD_POWER =
            real("threshold_power_w", judged -> judged.judgement().thresholdPowerW());
    private static final RowColumn<Judge.Judged, String> THRESHOLD_SOURCE =
            text("threshold_source", judged -> id(judged.judgement().thresholdSource()));
    private static final RowColumn<Judge.Judged, Double> INTENSITY_FACTOR =
            real(name(LoadNumber.INTENSITY_FACTOR), judged -> judged.judgement().intensityFactor());
    private static final RowColumn<Judge.Judged, Double> TRAINING_STRESS =
            real(name(LoadNumber.TRAINING_STRESS), judged -> judged.judgement().trainingStress());
    private static final RowColumn<Judge.Judged, String> VERDICT =
            required(text("verdict", judged -> judged.judgement().verdict().name()));
    private static final RowColumn<Judge.Judged, String> VERDICT_REASON =
            text("verdict_reason", judged -> judged.judgement().verdictReason());
    private static final RowColumn<Judge.Judged, Double> TARGET =
            real("target_w", judged -> judged.judgement().targetW());
    private static final RowColumn<Judge.Judged, Double> COST_LOW =
            real("cost_low_min", judged -> judged.judgement().costMinutesLow());
    private static final RowColumn<Judge.Judged, Double> COST_HIGH =
            real("cost_high_min", judged -> judged.judgement().costMinutesHigh());

    /** What depends on the rider and on the limits of judgement: a new judgement updates these columns. */
    static final List<RowColumn<Judge.Judged, ?>> OF_JUDGEMENT = List.of(
            JUDGEMENT_KEY,
            THRESHOLD_POWER,
            THRESHOLD_SOURCE,
            INTENSITY_FACTOR,
            TRAINING_STRESS,
            VERDICT,
            VERDICT_REASON,
            TARGET,
            COST_LOW,
            COST_HIGH);

    private static final RowColumn<Judge.Judged, Integer> SHOWS_LIMIT =
            whole("shows_limit", judged -> judged.showsLimit() ? 1 : 0);
    private static final RowColumn<Judge.Judged, Double> HEART_AT_ZERO =
            real("heart_at_zero_w_bpm", judged -> heart(judged, HeartLine::bpmAtZeroW));
    private static final RowColumn<Judge.Judged, Double> HEART_PER_W =
            real("heart_per_w_bpm", judged -> heart(judged, HeartLine::bpmPerW));
    private static final RowColumn<Judge.Judged, Double> HEART_FROM =
            real("heart_from_w", judged -> heart(judged, HeartLine::lowW));
    private static final RowColumn<Judge.Judged, Double> HEART_TO =
            real("heart_to_w", judged -> heart(judged, HeartLine::highW));
    private static final RowColumn<Judge.Judged, Double> SHOWN_DRAG_AREA =
            real("shown_drag_area_m2", judged -> judged.traits().dragAreaM2());
    private static final RowColumn<Judge.Judged, Double> SHOWN_ROLLING_RESISTANCE =
            real("shown_rolling_resistance", judged -> judged.traits().rollingResistance());
    private static final RowColumn<Judge.Judged, Double> OPENING_OVER_TARGET =
            real("opening_over_target", judged -> judged.traits().openingOverTarget());
    private static final RowColumn<Judge.Judged, Double> FADE =
            real("fade_percent", judged -> judged.traits().fadePercent());
    private static final RowColumn<Judge.Judged, Double> OPENING_CAP =
            real("opening_cap_w", judged -> judged.traits().openingCapW());
    private static final RowColumn<Judge.Judged, Double> DESCENT_SPEED =
            real("descent_speed_mps", judged -> judged.traits().descentSpeedMps());

    /** What a judged ride shows of its rider; a new judgement updates these columns too. They came later. */
    static final List<RowColumn<Judge.Judged, ?>> OF_TRAITS = List.of(
            SHOWS_LIMIT,
            HEART_AT_ZERO,
            HEART_PER_W,
            HEART_FROM,
            HEART_TO,
            SHOWN_DRAG_AREA,
            SHOWN_ROLLING_RESISTANCE,
            OPENING_OVER_TARGET,
            FADE,
            OPENING_CAP,
            DESCENT_SPEED);

    private StoreColumns() {}

    private static @Nullable Double heart(Judge.Judged judged, Function<HeartLine, Double> number) {
        HeartLine line = judged.traits().heartLine();
        return line == null ? null : number.apply(line);
    }

    /** What a new judgement of a ride updates. */
    static List<RowColumn<Judge.Judged, ?>> updatedByJudgement() {
        List<RowColumn<Judge.Judged, ?>> columns = new ArrayList<>(OF_JUDGEMENT);
        columns.addAll(OF_TRAITS);
        return columns;
    }

    private static List<RowColumn<RideNumbers, ?>> ofNumbers() {
        List<RowColumn<RideNumbers, ?>> columns = new ArrayList<>(TIMES.values());
        columns.add(POWER_SECONDS);
        columns.addAll(OTHERS.values());
        return List.copyOf(columns);
    }

    /** All columns but {@code id}, in the order of the table. */
    static List<RowColumn<?, ?>> all() {
        List<RowColumn<?, ?>> columns = new ArrayList<>(OF_RIDE);
        columns.addAll(OF_NUMBERS);
        columns.addAll(OF_JUDGEMENT);
        columns.addAll(LATER_OF_RIDE);
        columns.addAll(OF_SUMS);
        columns.addAll(OF_TRAITS);
        return columns;
    }

    /** The values of all columns of a new ride, in the order of {@link #all()}. */
    static @Nullable Object[] values(RideIntake.NewRide ride) {
        List<@Nullable Object> values = new ArrayList<>();
        OF_RIDE.forEach(column -> values.add(column.of(ride.ride())));
        OF_NUMBERS.forEach(column -> values.add(column.of(ride.judged().numbers())));
        OF_JUDGEMENT.forEach(column -> values.add(column.of(ride.judged())));
        LATER_OF_RIDE.forEach(column -> values.add(column.of(ride.ride())));
        OF_SUMS.forEach(column -> values.add(column.of(ride.ride())));
        OF_TRAITS.forEach(column -> values.add(column.of(ride.judged())));
        return values.toArray();
    }

    /**
     * The column of a load number: its id in lower case with underscores between the words, and {@code s} for seconds. Watts
     * a heartbeat keep the name under which the stores that there are have them.
     */
    static String name(LoadNumber number) {
        if (number == LoadNumber.WATTS_PER_BEAT) {
            return "efficiency_w_per_beat";
        }
        return number.id()
                .replaceAll("(?<=[a-z])(?=[A-Z])|(?<=[A-Z])(?=[A-Z][a-z])", "_")
                .toLowerCase(Locale.ROOT)
                .replaceAll("_seconds$", "_s");
    }

    private static @Nullable Integer seconds(@Nullable Double value) {
        return value == null ? null : value.intValue();
    }

    private static @Nullable String id(@Nullable Origin source) {
        return source == null ? null : source.name();
    }

    /** What a row is the ride of. */
    static StoredRide.Key key(StoreRow row) throws SQLException {
        return new StoredRide.Key(SHA256.in(row), SESSION_INDEX.in(row));
    }

    /** Whether the numbers of a row are of this version of the analysis. */
    static boolean isCurrent(StoreRow row) throws SQLException {
        return ANALYSIS_VERSION.in(row) == StoreDatabase.ANALYSIS_VERSION;
    }

    /** The name of the file's format. */
    static String format(StoreRow row) throws SQLException {
        return FORMAT.in(row);
    }

    /** What the device knew. */
    static StoredRide.Device device(StoreRow row) throws SQLException {
        return new StoredRide.Device(
                DEVICE.orNull(row),
                DEVICE_THRESHOLD_POWER.orNull(row),
                DEVICE_THRESHOLD_HEART_RATE.orNull(row),
                DEVICE_MAXIMUM_HEART_RATE.orNull(row),
                DEVICE_RIDER_MASS.orNull(row));
    }

    /** What the file says about where the ride was ridden; a row of an older version of the store says nothing. */
    static RideSetting setting(StoreRow row) throws SQLException {
        Integer isIndoorSport = IS_INDOOR_SPORT.orNull(row);
        Integer hasPositions = HAS_POSITIONS.orNull(row);
        Integer sports = SPORTS.orNull(row);
        return new RideSetting(
                isIndoorSport != null && isIndoorSport == 1,
                hasPositions == null || hasPositions == 1,
                sports == null ? 1 : sports);
    }

    /** The first second. */
    static Instant start(StoreRow row) throws SQLException {
        return Instant.ofEpochSecond(START.in(row));
    }

    /** Local time minus UTC, seconds, or null. */
    static @Nullable Integer utcOffsetSeconds(StoreRow row) throws SQLException {
        return UTC_OFFSET.orNull(row);
    }

    /** How many channels were measured. */
    static int channelCount(StoreRow row) throws SQLException {
        return CHANNEL_COUNT.in(row);
    }

    /** The check sum of the row and of those that belong to it, but for the seconds. */
    static @Nullable Long checkSum(StoreRow row) throws SQLException {
        return CHECK_SUM.orNull(row);
    }

    /** The check sum of the seconds. */
    static @Nullable Long secondsSum(StoreRow row) throws SQLException {
        return SECONDS_SUM.orNull(row);
    }

    /** How many laps the ride has. */
    static int lapCount(StoreRow row) throws SQLException {
        return LAP_COUNT.in(row);
    }

    /** The numbers that need no threshold. */
    static RideNumbers numbers(StoreRow row) throws SQLException {
        Map<LoadNumber, Double> values = new EnumMap<>(LoadNumber.class);
        for (Map.Entry<LoadNumber, RowColumn<RideNumbers, Integer>> time : TIMES.entrySet()) {
            values.put(time.getKey(), time.getValue().in(row).doubleValue());
        }
        for (Map.Entry<LoadNumber, RowColumn<RideNumbers, Double>> other : OTHERS.entrySet()) {
            Double value = other.getValue().orNull(row);
            if (value != null) {
                values.put(other.getKey(), value);
            }
        }
        return new RideNumbers(POWER_SECONDS.in(row), values);
    }

    /** The judgement, with what stands in the other tables. */
    static Judge.Judged judged(
            StoreRow row,
            List<Best> bests,
            List<Durability> durability,
            List<RidingBest> ridingBests,
            List<RideJudgement.Found> findings,
            RideNotes notes)
            throws SQLException {
        String source = THRESHOLD_SOURCE.orNull(row);
        RideJudgement judgement = new RideJudgement(
                THRESHOLD_POWER.orNull(row),
                source == null ? null : Origin.valueOf(source),
                INTENSITY_FACTOR.orNull(row),
                TRAINING_STRESS.orNull(row),
                Verdict.valueOf(VERDICT.in(row)),
                VERDICT_REASON.orNull(row),
                TARGET.orNull(row),
                COST_LOW.orNull(row),
                COST_HIGH.orNull(row),
                findings);
        return new Judge.Judged(
                numbers(row),
                judgement,
                JUDGEMENT_KEY.in(row),
                bests,
                durability,
                ridingBests,
                showsLimit(row),
                traits(row),
                notes);
    }

    /** Whether a row's ride was a race in which the rider faded, ran out of energy or drifted. */
    static boolean showsLimit(StoreRow row) throws SQLException {
        Integer showsLimit = SHOWS_LIMIT.orNull(row);
        return showsLimit != null && showsLimit == 1;
    }

    /** What a row's ride shows of its rider beside power. */
    static RideTraits traits(StoreRow row) throws SQLException {
        Double atZeroW = HEART_AT_ZERO.orNull(row);
        return new RideTraits(
                atZeroW == null
                        ? null
                        : new HeartLine(atZeroW, HEART_PER_W.in(row), HEART_FROM.in(row), HEART_TO.in(row)),
                SHOWN_DRAG_AREA.orNull(row),
                SHOWN_ROLLING_RESISTANCE.orNull(row),
                OPENING_OVER_TARGET.orNull(row),
                FADE.orNull(row),
                OPENING_CAP.orNull(row),
                DESCENT_SPEED.orNull(row));
    }
}
