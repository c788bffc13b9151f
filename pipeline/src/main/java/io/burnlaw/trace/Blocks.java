package io.burnlaw.trace;

/**
 * A record taken together by several samples at a time: enough for the quick look for mains lines, which are slow beside
 * the sampling of most loggers.
 *
 * @param time     middle of each block [s]
 * @param mean     of its samples
 * @param scatter  mean square of its samples about their mean
 * @param together samples in a block
 */
record Blocks(double[] time, double[] mean, double[] scatter, int together) {

    static Blocks of(double[] time, double[] values, int together) {
        int blocks = time.length / together;
        double[] middle = new double[blocks];
        double[] mean = new double[blocks];
        double[] scatter = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            int from = b * together;
            double sum = 0;
            double times = 0;
            for (int i = from; i < from + together; i++) {
                sum += values[i];
                times += time[i];
            }
            double level = sum / together;
            double squares = 0;
            for (int i = from; i < from + together; i++) {
                squares += (values[i] - level) * (values[i] - level);
            }
            middle[b] = times / together;
            mean[b] = level;
            scatter[b] = squares / together;
        }
        return new Blocks(middle, mean, scatter, together);
    }
}
