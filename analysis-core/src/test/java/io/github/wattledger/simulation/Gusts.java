package io.github.wattledger.simulation;

/** What the wind of a place and a moment makes of the steady wind. */
@FunctionalInterface
public interface Gusts {
    /** The wind is the same everywhere and at all times. */
    Gusts NONE = (steadyMps, distanceM, seconds, speedMps) -> steadyMps;

    /**
     * The wind against the rider.
     *
     * @param steadyMps the steady wind against the rider, m/s
     * @param distanceM metres from the start line
     * @param seconds since the first second of the recording
     * @param speedMps speed of the rider, m/s
     * @return the wind along the road that drags as the true wind does, wind from the side counted in, m/s
     */
    double headwindMps(double steadyMps, double distanceM, double seconds, double speedMps);
}
