package io.github.wattledger.intake;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.rider.Bounds;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which of several sources of a number about the rider counts: what the caller gave, otherwise the rider profile, otherwise
 * the rider's own earlier rides, otherwise the device. An estimate from the ride comes last.
 */
final class SourcePrecedence {
    static final String DEVICE_MASS_IGNORED = "device-mass-ignored";

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
        if (ofOwnRides != null) {
            return new Known(ofOwnRides, Origin.OWN_RIDES);
        }
        if (ofDevice == null || !Double.isFinite(ofDevice)) {
            return null;
        }
        if (setting.bounds.contains(ofDevice)) {
            return new Known(ofDevice, Origin.DEVICE);
        }
        notes.add(setting.ignored(ofDevice));
        return null;
    }
}
