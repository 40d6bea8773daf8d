package io.github.wattledger.season;

import java.io.Serializable;
import java.util.Locale;

/**
 * A ride that is in the season once already.
 *
 * @param file the file that was left out
 * @param keptFile the file that stands for the ride
 * @param reason how it is known that both hold the same ride
 */
public record DuplicateRide(String file, String keptFile, Reason reason) implements Serializable {
    /** How it is known that two files hold the same ride. */
    public enum Reason {
        /** The two files are equal byte for byte. */
        COPY,
        /** Both were recorded at the same time, and one rider cannot ride twice at the same time. */
        SAME_TIME,
        /**
         * Length, distance, work and heart rate agree, while the clocks differ by whole quarters of an hour: one file has
         * local times without a zone.
         */
        OTHER_CLOCK,
        /** Length, distance, work and heart rate agree, while one of the two has no date that can be believed. */
        NO_DATE;

        /** The word in reports for programs: the constant in lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Whether the two files are equal byte for byte. Otherwise the same ride was recorded or exported twice. */
    public boolean isCopy() {
        return reason == Reason.COPY;
    }
}
