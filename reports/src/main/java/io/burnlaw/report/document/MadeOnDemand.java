package io.burnlaw.report.document;

import java.util.AbstractList;
import java.util.Objects;
import java.util.RandomAccess;
import java.util.function.IntFunction;

/**
 * A list whose elements are made at each access, so that only those in use are in memory. A pass over the list costs as
 * much as making all of them.
 *
 * @param <E> of the elements
 */
public final class MadeOnDemand<E> extends AbstractList<E> implements RandomAccess {

    private final int size;
    private final IntFunction<E> made;

    /**
     * Makes a list.
     *
     * @param size how many elements there are
     * @param made one of them, by its place from 0; the same for the same place
     */
    public MadeOnDemand(int size, IntFunction<E> made) {
        this.size = size;
        this.made = made;
    }

    @Override
    public E get(int place) {
        return made.apply(Objects.checkIndex(place, size));
    }

    @Override
    public int size() {
        return size;
    }
}
