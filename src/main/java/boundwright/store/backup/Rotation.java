package boundwright.store.backup;

import boundwright.quantity.Limits;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * Which backups stay: the newest of each of the last days, weeks and months that have one (common practice). None goes for a worse one: a
 * backup stays too while no newer one that stays holds at least as much of everything.
 *
 * @param days days, 1 to 60
 * @param weeks ISO weeks, 0 to 60
 * @param months months, 0 to 120
 */
public record Rotation(int days, int weeks, int months) {
  private static final String WAY_OUT = "Seven days, four weeks and six months are usual.";

  /** Seven days, four weeks, half a year. */
  public static final Rotation USUAL = new Rotation(7, 4, 6);

  /** Refuses numbers out of range. */
  public Rotation {
    Limits.count("A number of days", days, 1, 60, WAY_OUT);
    Limits.count("A number of weeks", weeks, 0, 60, WAY_OUT);
    Limits.count("A number of months", months, 0, 120, WAY_OUT);
  }

  /** Those of {@code all} that may go, oldest first. */
  public List<Kept> toGo(List<Kept> all) {
    List<Kept> newestFirst = new ArrayList<>(all);
    newestFirst.sort(Comparator.comparing(Kept::made).reversed());
    Set<Kept> stay = new LinkedHashSet<>();
    stay(newestFirst, days, k -> k.made().toLocalDate(), stay);
    stay(newestFirst, weeks, k -> k.made().get(IsoFields.WEEK_BASED_YEAR) * 100 + k.made().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR), stay);
    stay(newestFirst, months, k -> k.made().getYear() * 12 + k.made().getMonthValue(), stay);
    List<Kept> go = new ArrayList<>();
    for (Kept k : newestFirst) {
      if (stay.contains(k)) {
        continue;
      }
      boolean held = stay.stream().anyMatch(s -> s.made().isAfter(k.made()) && k.counts().fewerIn(s.counts()).isEmpty());
      if (held) {
        go.add(0, k);
      } else {
        stay.add(k);
      }
    }
    return go;
  }

  private static void stay(List<Kept> newestFirst, int most, Function<Kept, Object> span, Set<Kept> stay) {
    Set<Object> seen = new HashSet<>();
    for (Kept k : newestFirst) {
      if (seen.size() < most && seen.add(span.apply(k))) {
        stay.add(k);
      }
    }
  }
}
