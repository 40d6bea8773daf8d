package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import java.io.Serial;
import java.util.function.Function;
import picocli.CommandLine.TypeConversionException;

/** A value of the command line cannot be taken, for a reason that has another wording in the units of another reader. */
final class RefusedValue extends TypeConversionException {
    @Serial
    private static final long serialVersionUID = 1L;

    private final transient Function<Units, String> reason;

    /** @param reason what is expected, in the units of a reader */
    RefusedValue(Function<Units, String> reason) {
        super(reason.apply(Units.METRIC));
        this.reason = reason;
    }

    /** What is expected, in the units of a reader. */
    String reason(Units units) {
        return reason.apply(units);
    }
}
