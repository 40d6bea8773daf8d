package io.github.wattledger.power;

import java.io.Serializable;
import java.util.Optional;

/** Critical power from best efforts: a fit, or the reason why there is none. */
public sealed interface CriticalPowerResult extends Serializable permits CriticalPowerFit, CriticalPowerRefusal {
    /** The fit, or empty when it was refused. */
    default Optional<CriticalPowerFit> accepted() {
        return this instanceof CriticalPowerFit fit ? Optional.of(fit) : Optional.empty();
    }
}
