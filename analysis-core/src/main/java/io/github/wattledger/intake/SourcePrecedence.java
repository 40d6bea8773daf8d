package io.github.wattledger.intake;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.rider.Bounds;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which of several sources of a number about the rider counts: what the caller gave, otherwise the rider profile, otherwise
 * the rider's own earlier rides, otherwise the device. An estimate from the ride comes last.
 *
 * <p>Own rides only show what a rider could do at least. So where the device holds clearly more, and not what devices are
 * delivered with, either none of these rides was hard or the device is wrong; then the device counts, with a note. One easy
 * month would else turn an easy ride into a hard one.
 */
final class SourcePrecedence {
    static final String DEVICE_MASS_IGNORED = "device-mass-ignored";

    /** Own rides that reach this share of the device's setting show it; the check of a season's threshold takes the same. */
    private static final double SHOWN_FROM = 0.90;

    private SourcePrecedence() {}

    /** A setting of a device for its rider: code of the note when it is ignored, name, unit, bounds. */
    record Setting(String code, String words, String unit, Bounds bounds) {
        static final Setting THRESHOLD_POWER =
                new Setting("device-threshold-power-ignored", "threshold power", " W", Bounds.THRESHOLD_POWER_W);
        static final Setting THRESHOLD_HEART_RATE = new Setting(
                "device-threshold-heart-rate-ignored",
                "threshold heart rate",
                " beats per minute",
                Bounds.THRESHOLD_HEART_RATE_BPM);
        static final Setting MASS = new Setting(DEVICE_MASS_IGNORED, "mass of the rider", " kg", Bounds.RIDER_MASS_KG);

        QualityNote notShown(double ofDevice, double ofOwnRides) {
            return new QualityNote(
                    "device-above-own-rides",
                    null,
                    "The device holds a " + words + " of " + Decimals.of(ofDevice, 0) + unit
                            + ", your own rides of the last 90 days show " + Decimals.of(ofOwnRides, 0) + unit
                            + ". The device's was used: either none of the rides was hard, or it is set too high.");
        }

        QualityNote ignored(double value) {
            String number = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
            return new QualityNote(
                    code,
                    null,
                    "The device holds a " + words + " of " + number + unit + ", outside " + bounds + unit
                            + ". It was ignored; correct it on the device, or give the true one.");
        }
    }

    /** The number from the first source that knows it; a setting of the device that nobody can have leaves a note. */
    static @Nullable Known first(
            @Nullable Double given,
            @Nullable Double ofProfile,
            @Nullable Double ofOwnRides,
            @Nullable Double ofDevice,
            Setting setting,
            List<QualityNote> notes) {
        if (given != null) {
            return new Known(given, Origin.GIVEN);
        }
        if (ofProfile != null) {
            return new Known(ofProfile, Origin.PROFILE);
        }
        if (ofOwnRides != null && !isFarBelow(ofOwnRides, ofDevice, setting)) {
            return new Known(ofOwnRides, Origin.OWN_RIDES);
        }
        if (ofDevice == null || !Double.isFinite(ofDevice)) {
            return null;
        }
        if (setting.bounds.contains(ofDevice)) {
            if (ofOwnRides != null) {
                notes.add(setting.notShown(ofDevice, ofOwnRides));
            }
            return new Known(ofDevice, Origin.DEVICE);
        }
        notes.add(setting.ignored(ofDevice));
        return null;
    }

    private static boolean isFarBelow(double ofOwnRides, @Nullable Double ofDevice, Setting setting) {
        return ofDevice != null
                && setting.bounds.contains(ofDevice)
                && ofDevice != RecordingDevice.FACTORY_THRESHOLD_POWER_W
                && ofOwnRides < SHOWN_FROM * ofDevice;
    }
}
