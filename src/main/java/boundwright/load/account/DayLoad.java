package boundwright.load.account;

import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What one athlete did on one day.
 *
 * @param date the day
 * @param work contacts: bounding, jumps, run-throughs, in order
 * @param other what else the legs did
 */
public record DayLoad(LocalDate date, List<Work> work, List<OtherWork> other) {
  /** Takes copies. */
  public DayLoad {
    work = List.copyOf(work);
    other = List.copyOf(other);
  }

  /** A day with nothing beside its contacts. */
  public DayLoad(LocalDate date, List<Work> work) {
    this(date, work, List.of());
  }

  /** Reps by day, oldest first. */
  public static List<DayLoad> byDay(List<Rep> reps) {
    Map<LocalDate, List<Work>> days = new TreeMap<>();
    for (Rep r : reps) {
      days.computeIfAbsent(r.date(), d -> new ArrayList<>()).add(Work.of(r));
    }
    return days.entrySet().stream().map(e -> new DayLoad(e.getKey(), e.getValue())).toList();
  }

  /** The same day with more work to come. */
  public DayLoad with(List<Work> more) {
    return new DayLoad(date, Stream.concat(work.stream(), more.stream()).toList(), other);
  }

  /** Whether the legs did nothing. */
  public boolean isEmpty() {
    return work.isEmpty() && other.isEmpty();
  }

  /** Jump contacts in the sense of the handbooks: both legs, a landing on two feet once; sprints and ball games never. */
  public int contacts() {
    return work.stream().mapToInt(Work::contacts).sum() + other.stream().mapToInt(OtherWork::jumpContacts).sum();
  }

  /** Jump contacts of one leg; a landing on two feet counts for each. */
  public int contacts(Foot foot) {
    return work.stream().mapToInt(w -> w.contacts(foot)).sum() + other.stream().mapToInt(o -> o.jumpContacts(foot)).sum();
  }

  /** Whether all that was done was jumping in a meet and running through the board. */
  public boolean onlyMeet() {
    return !work.isEmpty()
        && other.stream().allMatch(o -> o.jumpContacts() == 0)
        && work.stream().allMatch(w -> w.kind() == Work.Kind.MEET_JUMP || w.kind() == Work.Kind.RUN_THROUGH);
  }

  /**
   * Whether the legs need the full spacing after it: many contacts, or any from a long approach; run-throughs alone do not make it.
   *
   * @param fromContacts contacts from which a day is hard
   * @param fromSteps approach steps from which a day is hard
   */
  public boolean hard(int fromContacts, int fromSteps) {
    return contacts() >= fromContacts
        || work.stream().anyMatch(w -> w.kind() != Work.Kind.RUN_THROUGH && w.approachSteps() >= fromSteps)
        || other.stream().anyMatch(o -> o.kind() == OtherWork.Kind.BOUNDS && o.grade() >= fromSteps);
  }
}
