package examples.spark;

import io.github.wattledger.RideReview;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.season.BestEfforts;
import java.io.Serializable;
import java.math.BigInteger;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;

/** A review as one row of a table of rides and some of a table of bests, or why there is none. */
record RideRow(String file, Row ride, List<Row> bests) implements Serializable {
    static final StructType RIDES = new StructType()
            .add("file", DataTypes.StringType)
            .add("sha256", DataTypes.StringType)
            .add("session", DataTypes.IntegerType)
            .add("problem", DataTypes.StringType)
            .add("startTime", DataTypes.TimestampType)
            .add("elapsedSeconds", DataTypes.IntegerType)
            .add("timerSeconds", DataTypes.IntegerType)
            .add("movingSeconds", DataTypes.IntegerType)
            .add("distanceM", DataTypes.DoubleType)
            .add("ascentM", DataTypes.DoubleType)
            .add("workKJ", DataTypes.DoubleType)
            .add("averagePowerW", DataTypes.DoubleType)
            .add("normalizedPowerW", DataTypes.DoubleType)
            .add("averageHeartRateBpm", DataTypes.DoubleType)
            .add("maximumHeartRateBpm", DataTypes.DoubleType)
            .add("wattsPerBeat", DataTypes.DoubleType)
            .add("decouplingPercent", DataTypes.DoubleType)
            .add("thresholdPowerW", DataTypes.DoubleType)
            .add("intensityFactor", DataTypes.DoubleType)
            .add("trainingStress", DataTypes.DoubleType)
            .add("verdict", DataTypes.StringType)
            .add("costMinutesLow", DataTypes.DoubleType)
            .add("costMinutesHigh", DataTypes.DoubleType);

    static final StructType BESTS = new StructType()
            .add("sha256", DataTypes.StringType)
            .add("session", DataTypes.IntegerType)
            .add("file", DataTypes.StringType)
            .add("seconds", DataTypes.IntegerType)
            .add("watts", DataTypes.DoubleType);

    static RideRow of(String file, String sha256, RideReview review) {
        RideLoad load = review.load();
        int session = review.source().sessionIndex();
        Optional<TimeLedger.Entry> cost = review.pacing().ledger().allAtOnce();
        Row ride = RowFactory.create(
                file,
                sha256,
                session,
                null,
                Timestamp.from(review.source().startTime()),
                load.elapsedSeconds(),
                load.timerSeconds(),
                load.movingSeconds(),
                load.distanceM(),
                load.ascentM(),
                load.workKJ(),
                load.averagePowerW(),
                load.normalizedPowerW(),
                load.averageHeartRateBpm(),
                load.maximumHeartRateBpm(),
                load.wattsPerBeat(),
                load.decouplingPercent(),
                review.rider().thresholdPowerW(),
                load.intensityFactor(),
                load.trainingStress(),
                review.pacing().verdict().words(),
                cost.map(TimeLedger.Entry::minutesLow).orElse(null),
                cost.map(TimeLedger.Entry::minutesHigh).orElse(null));
        List<Row> bests = new ArrayList<>();
        for (int seconds : BestEfforts.DURATIONS) {
            if (seconds <= review.curve().longestSeconds()) {
                bests.add(RowFactory.create(
                        sha256, session, file, seconds, review.curve().bestWatts(seconds)));
            }
        }
        return new RideRow(file, ride, bests);
    }

    static RideRow problem(String file, String sha256, String problem) {
        Object[] cells = new Object[RIDES.length()];
        cells[0] = file;
        cells[1] = sha256;
        cells[2] = 0;
        cells[3] = problem;
        return new RideRow(file, RowFactory.create(cells), List.of());
    }

    static String sha256(byte[] content) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(content);
            return String.format("%064x", new BigInteger(1, digest));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java has it", e);
        }
    }
}
