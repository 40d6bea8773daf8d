package io.github.wattledger.power;

import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * How a rider's heart rate answered power in one ride: a straight line, and the powers on which it was fitted.
 *
 * @param bpmAtZeroW where the line meets zero power, beats per minute
 * @param bpmPerW the rise of heart rate for one watt more, beats per minute
 * @param lowW the lowest power on which it was fitted, the outermost three percent left out, watts
 * @param highW the highest such power, watts
 */
public record HeartLine(double bpmAtZeroW, double bpmPerW, double lowW, double highW) implements Serializable {
    /**
     * Heart rate at a power, beats per minute.
     *
     * @param watts the power
     * @return empty where the line was not fitted at this power
     */
    public OptionalDouble bpmAt(double watts) {
        return watts >= lowW && watts <= highW
                ? OptionalDouble.of(bpmAtZeroW + bpmPerW * watts)
                : OptionalDouble.empty();
    }
}
