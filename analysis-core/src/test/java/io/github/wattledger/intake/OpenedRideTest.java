package io.github.wattledger.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class OpenedRideTest {
    private static final Path FILE = Path.of("..", "sample-rides", "damaged.fit");

    @Test
    void aFileItsBytesAndAStreamOfThemAreOneRide() throws IOException, UnreadableRideException {
        byte[] content = Files.readAllBytes(FILE);
        OpenedRide byPath = OpenedRide.of(RideInput.of(FILE), ReadOptions.DEFAULT, null);
        OpenedRide byBytes = OpenedRide.of(RideInput.of(content, "damaged.fit"), ReadOptions.DEFAULT, null);
        OpenedRide byStream;
        try (InputStream in = new ByteArrayInputStream(content)) {
            byStream = OpenedRide.of(RideInput.of(in, "damaged.fit"), ReadOptions.DEFAULT, null);
        }
        assertThat(byBytes).isEqualTo(byPath);
        assertThat(byStream).isEqualTo(byPath);
        assertThat(byPath.source().file()).isEqualTo("damaged.fit");
        assertThat(byPath.source().sha256()).hasSize(64);
    }

    @Test
    void aStreamLongerThanTheLimitIsRefusedByName() throws IOException {
        byte[] content = Files.readAllBytes(FILE);
        ReadLimits limits = new ReadLimits(content.length - 1, 1_000_000, 1_000, 512_000_000L);
        assertThatThrownBy(() -> OpenedRide.of(
                        RideInput.of(new ByteArrayInputStream(content), "upload"),
                        ReadOptions.DEFAULT.withLimits(limits),
                        null))
                .isInstanceOf(UnreadableRideException.class)
                .hasMessageStartingWith("upload: has more than the ");
        ReadLimits enough = new ReadLimits(content.length, 1_000_000, 1_000, 512_000_000L);
        assertThat(catchUnreadable(content, enough)).isFalse();
    }

    private static boolean catchUnreadable(byte[] content, ReadLimits limits) {
        try {
            OpenedRide.of(
                    RideInput.of(new ByteArrayInputStream(content), "upload"),
                    ReadOptions.DEFAULT.withLimits(limits),
                    null);
            return false;
        } catch (UnreadableRideException e) {
            return true;
        }
    }

    @Test
    void aStreamThatBreaksIsRefusedByName() throws IOException {
        InputStream broken = InputStream.nullInputStream();
        broken.close();
        assertThatThrownBy(() -> OpenedRide.of(RideInput.of(broken, "upload"), ReadOptions.DEFAULT, null))
                .isInstanceOf(UnreadableRideException.class)
                .hasMessage("upload: could not be read (Stream closed)");
    }

    /** Some devices store 0 W where they had no power meter. */
    @Test
    void zerosOfPowerAreNoTotalsOfARideWithoutPower() {
        DeviceTotals stored =
                new DeviceTotals(10.0, 10.0, null, 100.0, 0.0, 0.0, 0.0, null, 0.0, 0.0, 120.0, null, null, null);
        Ride without = Ride.ofWatts(Double.NaN, Double.NaN);
        OpenedRide opened = OpenedRide.of(without, RecordingDevice.UNKNOWN, null);
        OpenedRide withTotals =
                new OpenedRide(without, opened.quality(), opened.source(), opened.device(), stored, opened.setting());
        assertThat(withTotals.measuredTotals())
                .isEqualTo(new DeviceTotals(
                        10.0, 10.0, null, 100.0, 0.0, null, null, null, null, null, 120.0, null, null, null));
        assertThat(withTotals.totals()).isEqualTo(stored);
        assertThat(opened.quality().powerSource()).isEqualTo(PowerSource.NONE);
    }
}
