package examples.spark;

import static org.apache.spark.sql.functions.abs;
import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.max;
import static org.apache.spark.sql.functions.to_timestamp;

import java.util.List;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;

/**
 * Holds what Spark wrote against what {@code wattledger season --tables} wrote of the same files; ends with status 1 when
 * they differ. Arguments: where Spark wrote to, and the folder of the tables.
 */
public final class CompareWithSeason {
    /** The tables have three decimals. */
    private static final double HALF_A_DIGIT = 0.0005 + 1e-9;

    private static final List<String> NUMBERS = List.of(
            "elapsedSeconds",
            "timerSeconds",
            "movingSeconds",
            "distanceM",
            "ascentM",
            "workKJ",
            "averagePowerW",
            "normalizedPowerW",
            "averageHeartRateBpm",
            "maximumHeartRateBpm",
            "wattsPerBeat",
            "decouplingPercent",
            "thresholdPowerW",
            "intensityFactor",
            "trainingStress",
            "costMinutesLow",
            "costMinutesHigh");

    private CompareWithSeason() {}

    /** Compares. */
    public static void main(String[] arguments) {
        SparkSession spark = SparkSession.builder()
                .master("local[*]")
                .config("spark.driver.bindAddress", "127.0.0.1")
                .config("spark.driver.host", "127.0.0.1")
                .config("spark.ui.enabled", false)
                .config("spark.sql.session.timeZone", "UTC")
                .config("spark.sql.shuffle.partitions", 4)
                .getOrCreate();
        boolean same;
        try {
            same = sameRides(spark, arguments[0], arguments[1]) & sameBests(spark, arguments[0], arguments[1]);
        } finally {
            spark.stop();
        }
        System.exit(same ? 0 : 1);
    }

    private static boolean sameRides(SparkSession spark, String target, String tables) {
        Dataset<Row> ours =
                spark.read().parquet(target + "/rides").filter(col("problem").isNull());
        Dataset<Row> theirs = csv(spark, tables + "/rides.csv");
        Dataset<Row> pairs = ours.as("ours")
                .join(theirs.as("theirs"), col("ours.startTime").equalTo(to_timestamp(col("theirs.startTime"))));
        long count = pairs.count();
        boolean same = count == ours.count() && count == theirs.count();
        System.out.println("rides: " + ours.count() + " here, " + theirs.count() + " there, " + count + " in both");
        for (String name : NUMBERS) {
            long different = pairs.filter(differs(col("ours." + name), col("theirs." + name)))
                    .count();
            System.out.println(name + ": " + different + " differ");
            same &= different == 0;
        }
        long verdicts = pairs.filter(col("ours.verdict").notEqual(col("theirs.verdict")))
                .count();
        System.out.println("verdict: " + verdicts + " differ");
        return same & verdicts == 0;
    }

    private static boolean sameBests(SparkSession spark, String target, String tables) {
        Dataset<Row> ours = spark.read()
                .parquet(target + "/bests")
                .groupBy("seconds")
                .agg(max("watts").as("watts"));
        Dataset<Row> theirs = csv(spark, tables + "/bests.csv");
        Dataset<Row> pairs =
                ours.as("ours").join(theirs.as("theirs"), col("ours.seconds").equalTo(col("theirs.seconds")));
        long different =
                pairs.filter(differs(col("ours.watts"), col("theirs.watts"))).count();
        System.out.println("bests: " + ours.count() + " here, " + theirs.count() + " there, " + pairs.count()
                + " in both, " + different + " differ");
        return different == 0 && pairs.count() == ours.count() && pairs.count() == theirs.count();
    }

    private static Column differs(Column ours, Column theirs) {
        Column number = theirs.cast("double");
        return ours.isNull()
                .notEqual(number.isNull())
                .or(abs(ours.minus(number)).gt(HALF_A_DIGIT));
    }

    private static Dataset<Row> csv(SparkSession spark, String file) {
        return spark.read().option("header", true).csv(file);
    }
}
