package io.burnlaw.trace;

/**
 * What a column of a record is, for messages and for its zero.
 *
 * @param name   such as {@code pressure}
 * @param known  what it must read when nothing happens: the ambient pressure [Pa], or no thrust [N]
 * @param unit   in which messages speak, in SI
 */
record Channel(String name, double known, double unit, String symbol) {

    static Channel pressure(double ambient) {
        return new Channel("pressure", ambient, 1e3, "kPa");
    }

    static Channel thrust() {
        return new Channel("thrust", 0, 1, "N");
    }
}
