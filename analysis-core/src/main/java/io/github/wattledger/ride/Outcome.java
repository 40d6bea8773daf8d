package io.github.wattledger.ride;

import java.io.Serializable;
import java.util.Optional;
import java.util.function.Function;

/**
 * A result, or the reason why there is none. Everything in this library that may decline to give a result returns it in
 * this shape. It is serializable when its value is.
 *
 * @param <T> what the result is
 */
public sealed interface Outcome<T> extends Serializable {
    /**
     * There is a result.
     *
     * @param value the result
     */
    record Of<T>(T value) implements Outcome<T> {}

    /**
     * There is no result.
     *
     * @param reason why, one clause for people without a full stop
     */
    record Refused<T>(String reason) implements Outcome<T> {}

    /** The outcome that holds a result. */
    static <T> Outcome<T> of(T value) {
        return new Of<>(value);
    }

    /** The outcome without a result, for a reason in one clause without a full stop. */
    static <T> Outcome<T> refused(String reason) {
        return new Refused<>(reason);
    }

    /** The result, or empty when it was refused. */
    default Optional<T> found() {
        return this instanceof Of<T> of ? Optional.of(of.value()) : Optional.empty();
    }

    /** The reason why there is no result, or empty when there is one. */
    default Optional<String> refusal() {
        return this instanceof Refused<T> refused ? Optional.of(refused.reason()) : Optional.empty();
    }

    /**
     * The result, or an exception that carries the reason.
     *
     * @param exception makes the exception from the reason
     * @throws X when there is no result
     */
    default <X extends Throwable> T orElseThrow(Function<String, X> exception) throws X {
        if (this instanceof Refused<T> refused) {
            throw exception.apply(refused.reason());
        }
        return ((Of<T>) this).value();
    }
}
