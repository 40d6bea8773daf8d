package io.github.wattledger.intake;

import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Where the numbers of a ride come from. What is not known is null.
 *
 * @param file the file's name without its folder
 * @param format the format's name, for instance {@code FIT}
 * @param sha256 the SHA-256 digest of the file's bytes, lower-case hexadecimal
 * @param device the recording device
 * @param sport the sport, as the FIT profile spells it
 * @param startTime the first second of the recording
 * @param utcOffsetSeconds the rider's local time minus UTC, seconds
 * @param sessionIndex the position of the session within the file, from 0
 */
public record RideSource(
        @Nullable String file,
        @Nullable String format,
        @Nullable String sha256,
        @Nullable String device,
        @Nullable String sport,
        Instant startTime,
        @Nullable Integer utcOffsetSeconds,
        int sessionIndex)
        implements Serializable {
    static RideSource of(
            Recording recording, Ride ride, @Nullable String file, @Nullable String format, @Nullable String sha256) {
        return new RideSource(
                file,
                format,
                sha256,
                recording.device().name(),
                recording.sport(),
                ride.start(),
                recording.utcOffsetSeconds(),
                recording.sessionIndex());
    }
}
