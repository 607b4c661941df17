package boundwright.season.why;

import boundwright.season.year.Level;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a plan would be like if one thing were otherwise, less what it is: by level, only where they differ; more is worse.
 *
 * @param more by level, in the level's unit
 */
public record Cost(Map<Level, Long> more) implements Comparable<Cost> {
  /** Takes a copy. */
  public Cost {
    more = Map.copyOf(more);
  }

  /** Between two scores. */
  public static Cost between(long[] now, long[] then) {
    Map<Level, Long> out = new EnumMap<>(Level.class);
    for (Level level : Level.values()) {
      long d = then[level.at()] - now[level.at()];
      if (d != 0) {
        out.put(level, d);
      }
    }
    return new Cost(out);
  }

  /** The first level that differs decides. */
  @Override
  public int compareTo(Cost other) {
    for (Level level : Level.values()) {
      int c = Long.compare(at(level), other.at(level));
      if (c != 0) {
        return c;
      }
    }
    return 0;
  }

  /** At a level. */
  public long at(Level level) {
    return more.getOrDefault(level, 0L);
  }

  /** The first level at which it would be worse; null if it would be worse at none before it were better. */
  public @Nullable Level decides() {
    for (Level level : Level.values()) {
      long d = at(level);
      if (d != 0) {
        return d > 0 ? level : null;
      }
    }
    return null;
  }

  /** In words: {@code 2 cautions more, 14 standing-bound contacts less off}. */
  public String said() {
    List<String> out = new ArrayList<>();
    for (Level level : Level.values()) {
      long d = at(level);
      if (d != 0) {
        out.add(level.label() + ": " + level.said(Math.abs(d)) + (d > 0 ? " more" : " less"));
      }
    }
    return out.isEmpty() ? "nothing" : String.join("; ", out);
  }
}
