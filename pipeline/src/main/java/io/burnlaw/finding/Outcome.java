package io.burnlaw.finding;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The result of an attempt: a value, or all reasons why there is none. */
public sealed interface Outcome<T, R> {

    /**
     * There is a value.
     *
     * @param <R> of the reasons that there are not
     */
    record Given<T, R>(T given) implements Outcome<T, R> {}

    /**
     * There is no value.
     *
     * @param reasons all of them, at least one
     */
    record Refused<T, R>(List<R> reasons) implements Outcome<T, R> {
        public Refused {
            reasons = List.copyOf(reasons);
            if (reasons.isEmpty()) {
                throw new IllegalArgumentException("a refusal has at least one reason");
            }
        }
    }

    /**
     * Answers for both cases.
     *
     * @param given   the answer where it was had
     * @param refused the answer where it was not
     */
    default <A> A match(Function<T, A> given, Function<List<R>, A> refused) {
        return this instanceof Given<T, R> had
                ? given.apply(had.given())
                : refused.apply(((Refused<T, R>) this).reasons());
    }

    /**
     * The same with what is made of the thing.
     *
     * @param <A> of what is made
     * @return it, or the same reasons
     */
    default <A> Outcome<A, R> map(Function<T, A> change) {
        return match(value -> new Given<>(change.apply(value)), Refused::new);
    }

    /** {@return the thing; empty where it cannot be had} */
    default Optional<T> value() {
        return match(Optional::of, reasons -> Optional.empty());
    }

    /** {@return every reason why it cannot be had; none where it was} */
    default List<R> reasons() {
        return match(value -> List.of(), Function.identity());
    }

    /**
     * The thing, where it must be there.
     *
     * @throws IllegalArgumentException that gives the reasons why it is not
     */
    default T orElseThrow() {
        return match(Function.identity(), reasons -> {
            throw new IllegalArgumentException(
                    String.join("; ", reasons.stream().map(String::valueOf).toList()));
        });
    }
}
