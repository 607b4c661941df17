package boundwright.load;

import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What one athlete did on one day.
 *
 * @param date the day
 * @param work what was done, in order
 */
public record DayLoad(LocalDate date, List<Work> work) {
  /** Takes a copy. */
  public DayLoad {
    work = List.copyOf(work);
  }

  /** Reps by day, oldest first. */
  public static List<DayLoad> byDay(List<Rep> reps) {
    Map<LocalDate, List<Work>> days = new TreeMap<>();
    for (Rep r : reps) {
      days.computeIfAbsent(r.date(), d -> new ArrayList<>()).add(Work.of(r));
    }
    return days.entrySet().stream().map(e -> new DayLoad(e.getKey(), e.getValue())).toList();
  }

  /** Contacts of both legs. */
  public int contacts() {
    return work.stream().mapToInt(Work::contacts).sum();
  }

  /** Contacts of one leg. */
  public int contacts(Foot foot) {
    return work.stream().mapToInt(w -> w.contacts(foot)).sum();
  }

  /** Whether the legs need the full spacing after it: many contacts, or any from a long approach. */
  public boolean hard(GuardLimits limits) {
    return contacts() >= limits.hardContacts()
        || work.stream().anyMatch(w -> w.approachSteps() >= limits.hardSteps());
  }
}
