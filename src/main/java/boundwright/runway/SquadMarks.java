package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
import boundwright.athlete.KeptAnswers;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Remembered;
import java.time.LocalDate;
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
  private final Remembered<Asked, KeptAnswers<LocalDate, MarkAdvice>> drills = new Remembered<>(MOST_DRILLS);
  private final TapeMemory places = new TapeMemory();
  private final Remembered<Wishes, Tapes> tapes = new Remembered<>(MOST_TAPES);

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
  private record Wishes(List<Named> wishes, LengthUnit unit) {}

  private record Named(String athlete, String drill, SameAdvice advice) {}

  SquadMarks(Changes changes, Work work) {
    this.changes = changes;
    this.work = work;
  }

  /** The marks by the athlete's number, in the order of the athletes. */
  Map<Long, MarkAdvice> of(List<Athlete> athletes, Asked asked, LocalDate today) {
    return drills.of(asked, k -> new KeptAnswers<>(changes)).of(athletes, today, some -> work.marks(some, asked, today));
  }

  /** The fewest tapes for these wishes. */
  Tapes tapes(List<Tapes.Wish> wishes, LengthUnit unit) {
    List<Named> named = wishes.stream().map(w -> new Named(w.athlete(), w.drill(), new SameAdvice(w.advice()))).toList();
    return tapes.of(new Wishes(named, unit), k -> TapePlanner.fewest(wishes, unit, places));
  }
}
