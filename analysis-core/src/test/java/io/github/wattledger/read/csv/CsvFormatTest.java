package io.github.wattledger.read.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.read.CsvColumns;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.testing.CleanTable;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CsvFormatTest {
    private static final long SEVEN = Instant.parse("2024-05-04T07:00:00Z").getEpochSecond();

    private static ReadResult read(String text) throws UnreadableRideException {
        return read(text, ReadRequest.DEFAULT);
    }

    private static ReadResult read(String text, ReadRequest options) throws UnreadableRideException {
        return new CsvFormat().read(text.getBytes(StandardCharsets.UTF_8), options);
    }

    private static Samples samples(String text) throws UnreadableRideException {
        return read(text).recordings().get(0).samples();
    }

    private static List<String> texts(ReadResult result) {
        return result.notes().stream().map(ReadNote::text).toList();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "time,power,heart_rate\n2024-05-04T07:00:00Z,200,120\n2024-05-04T07:00:01Z,,121\n",
                "time;power;heart_rate\r\n2024-05-04T07:00:00Z;200;120\r\n2024-05-04T07:00:01Z;;121\r\n",
                "time\tpower\theart_rate\n2024-05-04T07:00:00Z\t200\t120\n2024-05-04T07:00:01Z\t\t121\n",
                "\uFEFFtime,power,heart_rate\n2024-05-04T07:00:00Z,200,120\n2024-05-04T07:00:01Z,,121",
                "sep=;\n\ntime;power;heart_rate\n2024-05-04T07:00:00Z;200;120\n2024-05-04T07:00:01Z;;121\n",
                "\"Time\",\"Watts\",\"HR\"\n\"2024-05-04 09:00:00+02:00\",\"200\",\"120\"\n1714806001,,121\n"
            })
    void readsEveryUsualShape(String text) throws UnreadableRideException {
        boolean mixed = text.contains("1714806001");
        Samples samples = samples(mixed ? text.replace("1714806001", "2024-05-04T07:00:01Z") : text);
        assertThat(samples.epochSecond(0)).isEqualTo(SEVEN);
        assertThat(samples.epochSecond(1)).isEqualTo(SEVEN + 1);
        assertThat(samples.column(Channel.POWER)).isEqualTo(Series.of(200, Double.NaN));
        assertThat(samples.column(Channel.HEART_RATE)).isEqualTo(Series.of(120, 121));
    }

    @Test
    void readsUtf16AsTheByteOrderMarkSays() throws UnreadableRideException {
        byte[] text = "\uFEFFtime\tpower\n2024-05-04T07:00:00Z\t200\n".getBytes(StandardCharsets.UTF_16LE);
        assertThat(new CsvFormat().recognizes(text)).isTrue();
        Samples samples = new CsvFormat()
                .read(text, ReadRequest.DEFAULT)
                .recordings()
                .get(0)
                .samples();
        assertThat(samples.column(Channel.POWER)).isEqualTo(Series.of(200));
    }

    @ParameterizedTest
    @CsvSource({
        "2024-05-04T07:00:05Z, 2024-05-04T07:00:05Z",
        "2024-05-04T09:00:05.750+02:00, 2024-05-04T07:00:05Z",
        "2024-05-04 07:00:05, 2024-05-04T07:00:05Z",
        "1714806005, 2024-05-04T07:00:05Z",
        "1714806005.9, 2024-05-04T07:00:05Z",
        "1714806005900, 2024-05-04T07:00:05Z",
        "5, 1970-01-01T00:00:05Z",
        "1:02:03, 1970-01-01T01:02:03Z",
        "62:03, 1970-01-01T01:02:03Z"
    })
    void readsTimesOfEveryKind(String cell, Instant expected) throws UnreadableRideException {
        assertThat(samples("time,power\n" + cell + ",200\n").epochSecond(0)).isEqualTo(expected.getEpochSecond());
    }

    @Test
    void saysWhatTheTimesDoNot() throws UnreadableRideException {
        assertThat(texts(read("time,power\n2024-05-04T07:00:05,200\n")))
                .containsExactly("The times say no zone; they were taken as UTC.");
        assertThat(texts(read("elapsed_s,power\n5,200\n")))
                .containsExactly(
                        "The times count from the start: neither the day nor the hour of the ride is known. Where a time"
                                + " must stand, as in a table of the seconds, it counts from 1970.");
    }

    /** Factors: an hour has 3,600 s, a mile 1,609.344 m, a foot 0.3048 m (international agreement of 1959). */
    @ParameterizedTest
    @CsvSource({
        "speed_kmh, 36, SPEED, 10",
        "Speed (km/h), 36, SPEED, 10",
        "speed_mps, 10, SPEED, 10",
        "speed, 10, SPEED, 10",
        "speed [mph], 22.369362920544, SPEED, 10",
        "distance_km, 1.5, DISTANCE, 1500",
        "km, 1.5, DISTANCE, 1500",
        "distance_m, 1500, DISTANCE, 1500",
        "Distance (mi), 2, DISTANCE, 3218.688",
        "altitude_ft, 100, ALTITUDE, 30.48",
        "enhanced_altitude, 30.5, ALTITUDE, 30.5",
        "Temp (F), 50, TEMPERATURE, 10",
        "temperature_c, -4, TEMPERATURE, -4",
        "position_lat, 55.5, LATITUDE, 55.5",
        "longitude_deg, 9.5, LONGITUDE, 9.5",
        "left_share, 0.48, LEFT_SHARE, 0.48",
        "left_share_percent, 48, LEFT_SHARE, 0.48",
        "left_right_balance, 180, LEFT_SHARE, 0.48",
        "accumulated_power, 12345, ACCUMULATED_WORK, 12345",
        "accumulated_work_kj, 12.5, ACCUMULATED_WORK, 12500",
        "respiration_rpm, 31, RESPIRATION, 31",
        "front_teeth, 44, FRONT_TEETH, 44"
    })
    void knowsUnitsByTheHeader(String header, String cell, Channel channel, double expected)
            throws UnreadableRideException {
        Samples samples = samples("time," + header + "\n2024-05-04T07:00:00Z," + cell + "\n");
        assertThat(samples.get(channel, 0)).isCloseTo(expected, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"'12,5', 12.5", "'1.234,5', 1234.5", "'1,234.5', 1234.5", "12.5, 12.5", "-3, -3", "1e3, 1000"})
    void readsDecimalCommasAndPoints(String cell, double expected) throws UnreadableRideException {
        Samples samples = samples("time;altitude\n2024-05-04T07:00:00Z;" + cell + "\n");
        assertThat(samples.get(Channel.ALTITUDE, 0)).isEqualTo(expected);
    }

    @Test
    void takesTheBetterOfTwoColumns() throws UnreadableRideException {
        Samples samples = samples("time,altitude,enhanced_altitude\n2024-05-04T07:00:00Z,100,101.2\n");
        assertThat(samples.get(Channel.ALTITUDE, 0)).isEqualTo(101.2);
    }

    @Test
    void leavesOutAColumnInAUnitThatItDoesNotKnow() throws UnreadableRideException {
        ReadResult result = read("time,power,speed (knots)\n2024-05-04T07:00:00Z,200,10\n");
        assertThat(result.recordings().get(0).samples().has(Channel.SPEED)).isFalse();
        assertThat(texts(result))
                .containsExactly(
                        "The column \"speed (knots)\" has a unit that is not known for speed; it was left out.");
    }

    @Test
    void putsRowsInOrderOfTime() throws UnreadableRideException {
        ReadResult result = read("""
                time,power
                2024-05-04T07:00:02Z,202
                2024-05-04T07:00:00Z,200
                2024-05-04T07:00:01Z,201
                """);
        assertThat(result.recordings().get(0).samples().column(Channel.POWER)).isEqualTo(Series.of(200, 201, 202));
        assertThat(texts(result))
                .containsExactly("2 rows are earlier than a row before; the rows were put in order of time.");
    }

    @Test
    void namesBadCellsByLineAndColumnAndTakesThemAsMissing() throws UnreadableRideException {
        StringBuilder text = new StringBuilder("time,power\n");
        for (int i = 0; i < 10; i++) {
            text.append("2024-05-04T07:00:0")
                    .append(i)
                    .append("Z,")
                    .append(i < 7 ? "x" + i : "200")
                    .append('\n');
        }
        ReadResult result = read(text.toString());
        assertThat(result.recordings().get(0).samples().get(Channel.POWER, 0)).isNaN();
        assertThat(texts(result))
                .containsExactly("7 cells could not be read and are missing: line 2, column \"power\": \"x0\"; "
                        + "line 3, column \"power\": \"x1\"; line 4, column \"power\": \"x2\"; "
                        + "line 5, column \"power\": \"x3\"; line 6, column \"power\": \"x4\"; and 2 more.");
    }

    @Test
    void leavesOutRowsWithoutATime() throws UnreadableRideException {
        ReadResult result = read("time,power\nsoon,200\n2024-05-04T07:00:00Z,201\n");
        assertThat(result.recordings().get(0).samples().column(Channel.POWER)).isEqualTo(Series.of(201));
        assertThat(texts(result))
                .containsExactly(
                        "1 cell could not be read and is missing: line 2, column \"time\": \"soon\".",
                        "1 rows without a readable time were left out.");
    }

    @Nested
    class GivenColumns {
        private static final String TEXT = "Zeit,Pwr (W),Puls,v\n2024-05-04T07:00:00Z,200,120,10\n";

        private ReadRequest columns(Map<String, String> headers) {
            return ReadRequest.DEFAULT.withCsvColumns(new CsvColumns(headers));
        }

        @Test
        void areTakenAsTold() throws UnreadableRideException {
            ReadResult result =
                    read(TEXT, columns(Map.of("time", "Zeit", "power", "Pwr (W)", "heart_rate", "puls", "speed", "v")));
            Samples samples = result.recordings().get(0).samples();
            assertThat(samples.get(Channel.POWER, 0)).isEqualTo(200);
            assertThat(samples.get(Channel.HEART_RATE, 0)).isEqualTo(120);
            assertThat(samples.get(Channel.SPEED, 0)).isEqualTo(10);
            assertThat(texts(result)).contains("The column \"v\" names no known unit; taken as m/s.");
        }

        @Test
        void mustBeInTheFile() {
            assertThatThrownBy(() -> read(TEXT, columns(Map.of("time", "Zeit", "power", "Leistung"))))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("has no column \"Leistung\" for the power; its columns are Zeit, Pwr (W), Puls, v");
        }

        @Test
        void isGuessedWhereItIsAlike() {
            assertThatThrownBy(() -> read(TEXT, columns(Map.of("time", "Zeit", "heart_rate", "Plus"))))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage(
                            "has no column \"Plus\" for the heart_rate (did you mean \"Puls\"?); its columns are Zeit,"
                                    + " Pwr (W), Puls, v");
        }

        @Test
        void mustBeForSomethingThatIsRead() {
            assertThatThrownBy(() -> columns(Map.of("mood", "v")))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("column \"mood\", expected one of time, state, lap, power, heart_rate, cadence, speed, "
                            + "distance, altitude, latitude, longitude, temperature, left_share, accumulated_work, "
                            + "respiration, front_teeth, rear_teeth");
        }
    }

    @Nested
    class Refusals {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "'a,b\n1,2\n' | is a table without a time: no column is called time, timestamp or elapsed; name "
                            + "the right one with --column time=HEADER; its columns are a, b",
                    "'time,b\n1,2\n' | is a table with a time, but no column for power, heart rate, speed or position; "
                            + "name the right one with, for instance, --column power=HEADER; its columns are time, b",
                    "'time,power\n' | is a table with a header and no row; nothing was recorded in it",
                    "'time,power\nsoon,200\n' | is a table in which no row has a readable time: line 2, column "
                            + "\"time\": \"soon\""
                })
        void sayWhatIsMissing(String text, String message) {
            assertThatThrownBy(() -> read(text))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage(message);
        }

        @Test
        void ofMoreSamplesThanAllowed() {
            ReadRequest options = ReadRequest.DEFAULT.withLimits(new ReadLimits(10_000, 1, 10, 10_000));
            assertThatThrownBy(() -> read("time,power\n1,2\n2,2\n", options))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("holds more than 1 samples, the most that is read; split it first");
        }
    }

    @Test
    void recognizesTablesOnly() {
        CsvFormat format = new CsvFormat();
        assertThat(format.recognizes("time,power\n".getBytes(StandardCharsets.UTF_8)))
                .isTrue();
        assertThat(format.recognizes("<gpx a=\"1,2\"/>".getBytes(StandardCharsets.UTF_8)))
                .isFalse();
        assertThat(format.recognizes("a note\nwith, commas below".getBytes(StandardCharsets.UTF_8)))
                .isFalse();
        assertThat(format.recognizes(new byte[] {'a', ',', 0, 1, 2})).isFalse();
    }

    @Nested
    class CleanRides {
        private final Path sample = Path.of("..", "sample-rides", "over-hard-start.fit");

        @Test
        void comeBackEqual() throws UnreadableRideException {
            Ride ride =
                    Cleaning.clean(RideFiles.read(sample).recordings().get(0)).ride();
            assertThat(ride.countSeconds(SecondState.STOPPED)).isPositive();
            assertThat(ride.laps()).isNotEmpty();
            Ride back = Cleaning.clean(read(CleanTable.of(ride)).recordings().get(0))
                    .ride();
            assertThat(back).isEqualTo(ride);
        }

        @Test
        void keepEachStateEvenWhereASecondCleaningWouldJudgeOtherwise() throws UnreadableRideException {
            String text = """
                    time,state,power_w,speed_mps
                    2024-05-04T07:00:00Z,riding,3000,0
                    2024-05-04T07:00:01Z,stopped,10,5
                    2024-05-04T07:00:02Z,paused,,
                    2024-05-04T07:00:03Z,missing,,
                    """;
            Cleaning.Cleaned cleaned = Cleaning.clean(read(text).recordings().get(0));
            Ride ride = cleaned.ride();
            assertThat(List.of(ride.state(0), ride.state(1), ride.state(2), ride.state(3)))
                    .containsExactly(SecondState.RIDING, SecondState.STOPPED, SecondState.PAUSED, SecondState.MISSING);
            assertThat(ride.series(Channel.POWER)).isEqualTo(Series.of(3000, 10, Double.NaN, Double.NaN));
            assertThat(cleaned.quality().recordedSeconds()).isEqualTo(2);
            assertThat(cleaned.quality().missingPowerSeconds()).isEqualTo(1);
            assertThat(cleaned.quality().notes())
                    .extracting(note -> note.text())
                    .contains("The file is a ride already cleaned: its values and states stand as they are.");
        }

        @Test
        void withAHoleInTheirTimesAreCleanedAgainAndKeepTheirPauses() throws UnreadableRideException {
            StringBuilder text = new StringBuilder("time,state,power\n");
            for (int i = 0; i < 60; i++) {
                String state = i >= 20 && i < 40 ? "paused" : "riding";
                if (i != 50) {
                    text.append(Instant.ofEpochSecond(SEVEN + i))
                            .append(',')
                            .append(state)
                            .append(",200\n");
                }
            }
            ReadResult result = read(text.toString());
            Ride ride = Cleaning.clean(result.recordings().get(0)).ride();
            assertThat(ride.countSeconds(SecondState.PAUSED)).isEqualTo(20);
            assertThat(ride.state(50)).isEqualTo(SecondState.MISSING);
            assertThat(texts(result))
                    .containsExactly(
                            "The states are not one for each of consecutive seconds: only the pauses are taken from "
                                    + "them.");
        }
    }

    @Test
    void aTableWithoutDatesSaysSo() throws UnreadableRideException {
        assertThat(read("elapsed,power\n0,200\n1,210\n").notes())
                .extracting(ReadNote::code)
                .contains("no-date");
        assertThat(read("time,power\n2024-05-04T07:00:00Z,200\n").notes())
                .extracting(ReadNote::code)
                .doesNotContain("no-date");
    }

    /** Linear in the columns: taken apart anew for each of 14 channels and their names, this took 10 s and more. */
    @Test
    void aQuarterOfAMillionColumnsAreTakenApartOnce() throws UnreadableRideException {
        StringBuilder header = new StringBuilder("time,power");
        StringBuilder row = new StringBuilder("2024-05-04T07:00:00Z,200");
        for (int i = 0; i < 250_000; i++) {
            header.append(",c").append(i);
            row.append(",1");
        }
        String table = header + "\n" + row + "\n";
        assertTimeout(Duration.ofSeconds(6), () -> read(table));
    }
}
