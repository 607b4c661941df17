package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
import boundwright.athlete.KeptAnswers;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Keeps the squad's marks, drill by drill, until something they rest on changed, and the tapes of the last marks. Safe for many threads. */
final class SquadMarks {
  /** More drills than two days' plans have. */
  private static final int MOST_DRILLS = 24;
  /** The whole plan, the cut plan of the card, and one to spare. */
  private static final int MOST_TAPES = 3;

  private final Changes changes;
  private final Work work;
  private final Map<Asked, KeptAnswers<LocalDate, MarkAdvice>> drills = new LinkedHashMap<>(16, 0.75f, true);
  private final TapeMemory places = new TapeMemory();
  private final Map<Wishes, Tapes> tapes = new LinkedHashMap<>(4, 0.75f, true);

  /**
   * What is asked of everybody.
   *
   * @param sequence what is bounded
   * @param drill whose approach they take
   */
  record Asked(Sequence sequence, Drill drill, CoachSettings settings) {}

  /** Works the marks of some athletes out. */
  interface Work {
    Map<Long, MarkAdvice> marks(List<Athlete> athletes, Asked asked, LocalDate today);
  }

  /** What tapes are asked for. */
  private record Wishes(List<Same> wishes, LengthUnit unit) {}

  /** A wish that is found without working through the figures of its advice: kept advice is the same object, and so equal at once. */
  private record Same(String athlete, String drill, MarkAdvice advice) {
    @Override
    public int hashCode() {
      return 31 * athlete.hashCode() + drill.hashCode();
    }
  }

  SquadMarks(Changes changes, Work work) {
    this.changes = changes;
    this.work = work;
  }

  /** The marks by the athlete's number, in the order of the athletes. */
  Map<Long, MarkAdvice> of(List<Athlete> athletes, Asked asked, LocalDate today) {
    return kept(asked).of(athletes, today, some -> work.marks(some, asked, today));
  }

  private KeptAnswers<LocalDate, MarkAdvice> kept(Asked asked) {
    synchronized (drills) {
      KeptAnswers<LocalDate, MarkAdvice> own = drills.computeIfAbsent(asked, k -> new KeptAnswers<>(changes));
      trim(drills, MOST_DRILLS);
      return own;
    }
  }

  /** The fewest tapes for these wishes. */
  Tapes tapes(List<Tapes.Wish> wishes, LengthUnit unit) {
    Wishes key = new Wishes(wishes.stream().map(w -> new Same(w.athlete(), w.drill(), w.advice())).toList(), unit);
    synchronized (tapes) {
      Tapes known = tapes.get(key);
      if (known != null) {
        return known;
      }
    }
    Tapes fresh = TapePlanner.fewest(wishes, unit, places);
    synchronized (tapes) {
      tapes.put(key, fresh);
      trim(tapes, MOST_TAPES);
    }
    return fresh;
  }

  private static <K, V> void trim(Map<K, V> map, int most) {
    while (map.size() > most) {
      map.remove(map.keySet().iterator().next());
    }
  }
}
