package examples.spark;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.max;
import static org.apache.spark.sql.functions.struct;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.rider.Rider;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.spark.api.java.JavaPairRDD;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.input.PortableDataStream;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;

/**
 * Reviews every recording below a folder in Spark: {@code rides} and {@code bests} as Parquet, one row a ride and one a
 * ride and duration, and the bests of all rides on the console. Arguments: the folder (any place that Spark can read),
 * where to write to, threshold power in watts.
 */
public final class SparkSeason {
    private SparkSeason() {}

    /** Runs it. The master is Spark's own setting; without one, all processors of this machine. */
    public static void main(String[] arguments) {
        if (arguments.length != 3) {
            throw new IllegalArgumentException("expected FOLDER TARGET THRESHOLD_POWER_W");
        }
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(Double.parseDouble(arguments[2]));
        SparkSession.Builder builder = SparkSession.builder().appName("wattledger-season");
        if (System.getProperty("spark.master") == null) {
            builder = builder.master("local[*]")
                    .config("spark.driver.bindAddress", "127.0.0.1")
                    .config("spark.driver.host", "127.0.0.1")
                    .config("spark.ui.enabled", false);
        }
        SparkSession spark = builder.getOrCreate();
        try {
            run(spark, arguments[0], arguments[1], rider);
        } finally {
            spark.stop();
        }
    }

    private static void run(SparkSession spark, String folder, String target, Rider rider) {
        JavaSparkContext context = new JavaSparkContext(spark.sparkContext());
        spark.sparkContext()
                .hadoopConfiguration()
                .setBoolean("mapreduce.input.fileinputformat.input.dir.recursive", true);
        int parts = 4 * spark.sparkContext().defaultParallelism(); // rides differ in length
        JavaPairRDD<String, PortableDataStream> files = context.binaryFiles(folder, parts);
        JavaRDD<RideRow> reviewed = files.filter(file -> isRide(file._1()))
                .repartition(parts)
                .flatMap(file -> review(file._1(), file._2().toArray(), rider).iterator())
                .cache();
        Dataset<Row> rides = spark.createDataFrame(reviewed.map(RideRow::ride), RideRow.RIDES)
                .dropDuplicates("sha256", "session");
        Dataset<Row> bests = spark.createDataFrame(
                        reviewed.flatMap(each -> each.bests().iterator()), RideRow.BESTS)
                .dropDuplicates("sha256", "session", "seconds");
        rides.write().mode(SaveMode.Overwrite).parquet(target + "/rides");
        bests.write().mode(SaveMode.Overwrite).parquet(target + "/bests");

        Dataset<Row> written = spark.read().parquet(target + "/rides");
        System.out.println("rides: " + written.filter(col("problem").isNull()).count() + ", files without a ride: "
                + written.filter(col("problem").isNotNull()).count());
        spark.read()
                .parquet(target + "/bests")
                .groupBy("seconds")
                .agg(max(struct("watts", "file")).as("best"))
                .orderBy("seconds")
                .select(col("seconds"), col("best.watts"), col("best.file"))
                .show(100, false);
    }

    /** The endings of files that a season reads, too. */
    private static boolean isRide(String file) {
        return RideFiles.fileEndings()
                .contains(file.substring(file.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
    }

    /** From the bytes of a file to its rides: the whole work, and all that a cluster does in parallel. */
    static List<RideRow> review(String file, byte[] content, Rider rider) {
        String sha256 = RideRow.sha256(content);
        try {
            List<Recording> recordings = RideFiles.read(RideInput.of(content, file), ReadOptions.DEFAULT)
                    .recordings();
            boolean anyNamed = recordings.stream().anyMatch(Recording::isCycling);
            List<RideRow> rows = new ArrayList<>();
            for (Recording recording : recordings) {
                if (anyNamed ? recording.isCycling() : recording.isOfUnnamedSport()) {
                    rows.add(RideRow.of(file, sha256, Reviewer.review(recording, rider, ReviewOptions.WHOLE_RIDE)));
                }
            }
            return rows.isEmpty() ? List.of(RideRow.problem(file, sha256, "holds no cycling")) : rows;
        } catch (UnreadableRideException e) {
            return List.of(RideRow.problem(file, sha256, e.getMessage()));
        }
    }
}
