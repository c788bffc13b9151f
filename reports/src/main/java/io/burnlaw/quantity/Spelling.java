package io.burnlaw.quantity;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the known word that was most likely meant. */
public final class Spelling {

    /** A capital in the wrong place is half a slip: {@code Mpa} means {@code MPa} more likely than {@code kpa}. */
    private static final double CAPITAL = 0.5;

    private Spelling() {}

    /**
     * The known word that an unknown one most likely stands for.
     *
     * @param word  as written
     * @param known what could have been meant; of equally near ones the first is taken
     * @return the nearest one; empty where none comes near
     */
    public static Optional<String> nearest(String word, Collection<String> known) {
        return known.stream()
                .filter(candidate -> near(Math.abs(word.length() - candidate.length()), word))
                .filter(candidate -> near(distance(word, candidate), word))
                .min(Comparator.comparingDouble(candidate -> distance(word, candidate)));
    }

    /** {@return what to write instead of a word: the known one that looks most like it, or else what is said otherwise} */
    public static String mend(String word, Collection<String> known, String otherwise) {
        return nearest(word, known).map(near -> "write   " + near).orElse(otherwise);
    }

    /** One slip in three letters is a typing error; in a single letter only a wrong capital is. */
    static boolean near(double distance, String word) {
        int letters = word.strip().length();
        return letters > 0 && distance <= Math.max(letters == 1 ? CAPITAL : 1.0, letters / 3.0);
    }

    /** Edit distance with transpositions (optimal string alignment); a wrong capital counts {@link #CAPITAL}. */
    static double distance(String a, String b) {
        if (Math.abs(a.length() - b.length()) > 20 || a.length() > 100) {
            return Double.POSITIVE_INFINITY;
        }
        double[][] cost = new double[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = i + j;
                    continue;
                }
                cost[i][j] = Math.min(
                        cost[i - 1][j - 1] + swap(a.charAt(i - 1), b.charAt(j - 1)),
                        1 + Math.min(cost[i - 1][j], cost[i][j - 1]));
                boolean transposed =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (transposed) {
                    cost[i][j] = Math.min(cost[i][j], 1 + cost[i - 2][j - 2]);
                }
            }
        }
        return cost[a.length()][b.length()];
    }

    private static double swap(char a, char b) {
        if (a == b) {
            return 0;
        }
        return Character.toLowerCase(a) == Character.toLowerCase(b) ? CAPITAL : 1;
    }
}
