package boundwright.season.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Who stands at the sand, to measure, rake and move tapes: a helper, or somebody who rests long enough to be back at the start in time. Whoever
 * stands there stays as long as they can, then the one comes who can stay longest: that needs the fewest changes.
 */
final class Hands {
  /** From the sand back to the start [s] (judgement). */
  static final int BACK_S = 20;

  private record Busy(int from, int to) {}

  private final List<String> helpers;
  private final List<String> names;
  /** Each athlete's reps, and what each person does besides. */
  private final List<List<Busy>> runs = new ArrayList<>();
  private final Map<Integer, List<Busy>> jobs = new HashMap<>();

  /** {@code start} and {@code hold} are [athlete][rep], [s]. */
  Hands(List<String> names, int[][] start, int[][] hold, List<String> helpers) {
    this.names = names;
    this.helpers = helpers;
    for (int a = 0; a < start.length; a++) {
      List<Busy> own = new ArrayList<>();
      for (int k = 0; k < start[a].length; k++) {
        own.add(new Busy(start[a][k] - BACK_S, start[a][k] + hold[a][k]));
      }
      runs.add(own);
    }
  }

  /** The helpers come after the athletes. */
  String name(int person) {
    return person < names.size() ? names.get(person) : helpers.get(person - names.size());
  }

  /** Somebody for this time, the present one if they can; null if nobody can. Then they are taken. */
  @Nullable Integer take(@Nullable Integer present, int from, int to) {
    Integer found = present != null && free(present, from, to) ? present : longest(from, to);
    if (found != null) {
      jobs.computeIfAbsent(found, p -> new ArrayList<>()).add(new Busy(from, to));
    }
    return found;
  }

  private @Nullable Integer longest(int from, int to) {
    Integer best = null;
    int stays = -1;
    for (int p = names.size() + helpers.size() - 1; p >= 0; p--) {
      if (free(p, from, to)) {
        int until = p < names.size() ? until(p, from) : Integer.MAX_VALUE;
        if (until > stays) {
          stays = until;
          best = p;
        }
      }
    }
    return best;
  }

  private int until(int athlete, int from) {
    return runs.get(athlete).stream().mapToInt(Busy::from).filter(s -> s >= from).min().orElse(Integer.MAX_VALUE - 1);
  }

  boolean free(int person, int from, int to) {
    List<Busy> own = person < names.size() ? runs.get(person) : List.of();
    return own.stream().noneMatch(b -> b.from < to && from < b.to)
        && Objects.requireNonNullElse(jobs.get(person), List.<Busy>of()).stream().noneMatch(b -> b.from < to && from < b.to);
  }
}
