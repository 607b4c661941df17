package boundwright.athlete;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Finds whom the coach may have meant by a name that is not in the squad. A name is near when it, or one of its words,
 * differs from what was asked by few letters (added, dropped, changed or exchanged with its neighbour), at most one
 * letter in three; or when it contains what was asked.
 */
public final class NearNames {
  private static final int MOST = 5;

  private NearNames() {}

  /** The near names, nearest first, then by name; at most five. */
  public static List<String> of(String asked, List<String> names) {
    String wanted = plain(asked);
    int allowed = Math.max(1, wanted.length() / 3);
    record Near(String name, int distance) {}
    return names.stream()
        .map(name -> new Near(name, distance(wanted, name)))
        .filter(near -> near.distance <= allowed)
        .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::name))
        .limit(MOST)
        .map(Near::name)
        .toList();
  }

  private static int distance(String wanted, String name) {
    String whole = plain(name);
    if (wanted.length() >= 2 && whole.contains(wanted)) {
      return 0;
    }
    int least = letters(wanted, whole);
    for (String word : whole.split(" ")) {
      least = Math.min(least, letters(wanted, word));
    }
    return least;
  }

  private static String plain(String name) {
    return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  /** Fewest single-letter changes and exchanges of neighbours from a to b (optimal string alignment). */
  static int letters(String a, String b) {
    int[][] d = new int[a.length() + 1][];
    d[0] = IntStream.rangeClosed(0, b.length()).toArray();
    for (int i = 1; i <= a.length(); i++) {
      d[i] = new int[b.length() + 1];
      d[i][0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int least = Math.min(d[i - 1][j - 1] + change, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
        boolean exchanged =
            i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
        d[i][j] = exchanged ? Math.min(least, d[i - 2][j - 2] + 1) : least;
      }
    }
    return d[a.length()][b.length()];
  }
}
