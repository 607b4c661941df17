package boundwright.athlete;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Keeps the answer about each athlete until something it rests on changed ({@link Changes}). An answer is never older than the question; two
 * who ask at once may both work it out. Safe for many threads.
 *
 * @param <B> what the question names beside the athlete, the day for example; with another one the answer is worked out again
 * @param <T> the answer, which nobody changes
 */
public final class KeptAnswers<B, T> {
  /** So many athletes are kept; a club has fewer. */
  private static final int MOST = 5_000;

  private final Changes changes;
  private final Map<Long, Kept<B, T>> kept = new ConcurrentHashMap<>();

  /** Keeps as long as {@code changes} says nothing. */
  public KeptAnswers(Changes changes) {
    this.changes = changes;
  }

  /** What was answered, and to what. */
  private record Kept<B, T>(Athlete athlete, B beside, long version, T answer) {
    boolean holds(Athlete asked, B now, long newest) {
      return version == newest && athlete.equals(asked) && beside.equals(now);
    }
  }

  /**
   * The answers about these athletes, by number and in this order.
   *
   * @param work answers about those who are not kept, all at once and each by number; not asked for nobody
   */
  public Map<Long, T> of(List<Athlete> asked, B beside, Function<List<Athlete>, Map<Long, T>> work) {
    Changes.Versions now = changes.now();
    if (now == null) {
      return work.apply(asked);
    }
    Map<Long, T> found = new HashMap<>();
    List<Athlete> unknown = new ArrayList<>();
    for (Athlete a : asked) {
      Kept<B, T> known = kept.get(a.id());
      if (known != null && known.holds(a, beside, now.of(a.id()))) {
        found.put(a.id(), known.answer);
      } else {
        unknown.add(a);
      }
    }
    if (!unknown.isEmpty()) {
      Map<Long, T> fresh = work.apply(unknown);
      if (kept.size() > MOST) {
        kept.clear();
      }
      for (Athlete a : unknown) {
        T answer = Objects.requireNonNull(fresh.get(a.id()), "an answer about everybody asked for");
        kept.put(a.id(), new Kept<>(a, beside, now.of(a.id()), answer));
        found.put(a.id(), answer);
      }
    }
    Map<Long, T> out = new LinkedHashMap<>();
    asked.forEach(a -> out.put(a.id(), Objects.requireNonNull(found.get(a.id()))));
    return out;
  }
}
