package io.github.wattledger.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.testing.RealRides;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The same ride in several formats, converted by somebody else's program, must read the same; odd files stay readable. */
class RealRecordingsTest {
    private static Recording recording(String name) throws UnreadableRideException {
        return RideFiles.read(RealRides.file(name)).recordings().get(0);
    }

    /** The tables hold the rider's local time, three hours from UTC. */
    @ParameterizedTest
    @ValueSource(
            strings = {"edge1000-two-long-stops-3h01", "edge520-race-3h37", "edge520plus-2h06", "edge530-62-laps-2h29"})
    void tableHoldsTheSameRideAsTheFitFile(String name) throws UnreadableRideException {
        Samples fit = recording(name + ".fit").samples();
        Samples csv = recording(name + ".csv").samples();
        assertThat(csv.size()).isEqualTo(fit.size());
        assertThat(csv.column(Channel.POWER)).isEqualTo(fit.column(Channel.POWER));
        assertThat(csv.column(Channel.HEART_RATE)).isEqualTo(fit.column(Channel.HEART_RATE));
        assertThat(csv.column(Channel.DISTANCE)).isEqualTo(fit.column(Channel.DISTANCE));
        assertThat(csv.column(Channel.LEFT_SHARE)).isEqualTo(fit.column(Channel.LEFT_SHARE));
        assertThat(csv.column(Channel.ACCUMULATED_WORK)).isEqualTo(fit.column(Channel.ACCUMULATED_WORK));
        assertThat(csv.epochSecond(csv.size() - 1) - csv.epochSecond(0))
                .isEqualTo(fit.epochSecond(fit.size() - 1) - fit.epochSecond(0));
    }

    @Test
    void gpxHoldsTheSameRideAsTheFitFile() throws UnreadableRideException {
        Samples fit = recording("edge520plus-2h06.fit").samples();
        Samples gpx = recording("edge520plus-2h06.gpx").samples();
        assertThat(gpx.column(Channel.POWER)).isEqualTo(fit.column(Channel.POWER));
        assertThat(gpx.column(Channel.HEART_RATE)).isEqualTo(fit.column(Channel.HEART_RATE));
        // The file has no distance: ours along the positions against the device's.
        double measured = gpx.get(Channel.DISTANCE, gpx.size() - 1);
        double device = fit.get(Channel.DISTANCE, fit.size() - 1);
        assertThat(measured).isCloseTo(device, within(device * 0.01));
    }

    @Test
    void gearChangesAreHeld() throws UnreadableRideException {
        // The first changes of this file as another decoder has them: 24 teeth at 23:08:37, 21 teeth at 23:09:20.
        Samples samples = recording("edge1040-no-session-33min.fit").samples();
        long start = samples.epochSecond(0);
        assertThat(samples.get(Channel.REAR_TEETH, 0)).isEqualTo(24);
        for (int i = 0; i < samples.size() && samples.epochSecond(i) < start + 43; i++) {
            assertThat(samples.get(Channel.REAR_TEETH, i)).isEqualTo(24);
        }
        assertThat(samples.get(Channel.REAR_TEETH, 43)).isEqualTo(21);
        assertThat(samples.has(Channel.FRONT_TEETH)).isFalse();
    }

    @Test
    void chainedFilesStayApart() throws UnreadableRideException {
        List<Recording> recordings = RideFiles.read(RealRides.file("corner/mk-chained_Activity_activity_poolswim.fit"))
                .recordings();
        assertThat(recordings).extracting(each -> each.samples().size()).containsExactly(3601, 24);
        assertThat(recordings.get(1).samples().has(Channel.POWER)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "corner/pf-activity-filecrc.fit, wrong-checksum, 14",
        "corner/pf-activity-unexpected-eof.fit, cut-short, 14",
        "corner/pf-activity-settings-corruptheader.fit, stray-bytes, 14",
        "corner/pf-activity-settings-nodata.fit, cut-short, 14",
        "sigma-cut-short-zero-power-4h39.fit, damaged, 14391"
    })
    void damageIsSurvivedAndNamed(String name, String code, int samples) throws UnreadableRideException {
        ReadResult result = RideFiles.read(RealRides.file(name));
        assertThat(result.recordings().get(0).samples().size()).isEqualTo(samples);
        assertThat(result.notes()).extracting(ReadNote::code).contains(code);
    }

    @Test
    void tracksWithoutTimesAreRefused() {
        for (String form : List.of("plain", "watts-unbound-prefix", "nested-unbound-prefix")) {
            Path file = RealRides.file("gpx-power-form-" + form + ".gpx");
            assertThatThrownBy(() -> RideFiles.read(file))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessageEndingWith(
                            ".gpx: has 80 track points but not one time: it is a route, or its times were "
                                    + "removed; export the recorded ride with times, or make a plan for it with"
                                    + " wattledger plan (in the library, RacePlan)");
        }
    }

    /** Its own session message says 6:15:08 and 102.5 km; the public tools of the format count 5,427 records. */
    @Test
    void aSoundFileWithEmptyDeveloperFieldsIsReadToItsEnd() throws UnreadableRideException {
        ReadResult result = RideFiles.read(RealRides.file("edge1000-empty-developer-fields-6h15.fit"));
        assertThat(result.notes()).isEmpty();
        Recording recording = result.recordings().get(0);
        Samples samples = recording.samples();
        assertThat(samples.size()).isEqualTo(5427);
        assertThat(recording.laps()).hasSize(1);
        DeviceTotals totals = Objects.requireNonNull(recording.totals());
        assertThat(totals.distanceM()).isCloseTo(102_500, within(50.0));
        assertThat(totals.elapsedSeconds()).isCloseTo(6 * 3600 + 15 * 60 + 8, within(1.0));
    }
}
