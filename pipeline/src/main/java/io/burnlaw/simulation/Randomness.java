package io.burnlaw.simulation;

import java.util.random.RandomGenerator;

/**
 * Random numbers that are the same on every machine and every Java: SplitMix64 (Steele, Lea and Flood, 2014), and normal
 * numbers by the transformation of Box and Muller (1958) on {@link StrictMath}, since the ways of the library may change.
 */
final class Randomness implements RandomGenerator {

    private static final long GAMMA = 0x9E3779B97F4A7C15L;

    private long state;

    private Randomness(long state) {
        this.state = state;
    }

    /**
     * The stream that belongs to a purpose, whatever else is drawn before or after.
     *
     * @param purpose what for, such as the id of a firing
     */
    static Randomness of(long seed, String purpose) {
        long mixed = seed;
        for (int i = 0; i < purpose.length(); i++) {
            mixed = mix(mixed + GAMMA) ^ purpose.charAt(i);
        }
        return new Randomness(mix(mixed));
    }

    @Override
    public long nextLong() {
        state += GAMMA;
        return mix(state);
    }

    @Override
    public double nextDouble() {
        return (nextLong() >>> 11) * 0x1.0p-53;
    }

    @Override
    public boolean nextBoolean() {
        return nextLong() < 0;
    }

    @Override
    public int nextInt(int bound) {
        return (int) (nextDouble() * bound);
    }

    @Override
    public double nextGaussian() {
        double radius = Math.sqrt(-2 * StrictMath.log(1 - nextDouble()));
        return radius * StrictMath.cos(2 * Math.PI * nextDouble());
    }

    private static long mix(long value) {
        long z = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
