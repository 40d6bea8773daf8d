package io.github.wattledger.ride;

/** What a sensor or the head unit can record, each with its one unit inside this project. */
public enum Channel {
    /** Power at the pedals or hub, watts; 0 is coasting, not missing. */
    POWER("power", "W", Kind.RATE),
    /** Heart rate, beats per minute. */
    HEART_RATE("heart rate", "bpm", Kind.RATE),
    /** Crank cadence, revolutions per minute; 0 is not pedalling, not missing. */
    CADENCE("cadence", "rpm", Kind.RATE),
    /** Speed over ground or of the wheel, metres per second. */
    SPEED("speed", "m/s", Kind.RATE),
    /** Distance since the start of the recording, metres. */
    DISTANCE("distance", "m", Kind.STATE),
    /** Altitude above sea level, metres. */
    ALTITUDE("altitude", "m", Kind.STATE),
    /** Latitude, degrees WGS-84, north positive. */
    LATITUDE("latitude", "deg", Kind.STATE),
    /** Longitude, degrees WGS-84, east positive. */
    LONGITUDE("longitude", "deg", Kind.STATE),
    /** Air temperature at the device, degrees Celsius. */
    TEMPERATURE("temperature", "°C", Kind.STATE),
    /** Share of the power that the left leg gave, 0 to 1. */
    LEFT_SHARE("left share of power", "", Kind.RATE),
    /** Work the power meter has counted since the start, joules (FIT {@code accumulated_power}). */
    ACCUMULATED_WORK("accumulated work", "J", Kind.STATE),
    /** Breaths per minute. */
    RESPIRATION("respiration", "breaths/min", Kind.RATE),
    /** Teeth of the chainring in use. */
    FRONT_TEETH("front teeth", "", Kind.STATE),
    /** Teeth of the cog in use. */
    REAR_TEETH("rear teeth", "", Kind.STATE);

    /** How two values of one second are made one. */
    public enum Kind {
        /** A momentary rate: the mean of the values of a second stands for it. */
        RATE,
        /** A state or a counter: the last value of a second stands for it. */
        STATE
    }

    private final String label;
    private final String unit;
    private final Kind kind;

    Channel(String label, String unit, Kind kind) {
        this.label = label;
        this.unit = unit;
        this.kind = kind;
    }

    /** The channel's name in prose, for instance {@code heart rate}. */
    public String label() {
        return label;
    }

    /** The unit's symbol, empty for a plain number. */
    public String unit() {
        return unit;
    }

    /** Whether values of this channel are rates or states. */
    public Kind kind() {
        return kind;
    }
}
