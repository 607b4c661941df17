package boundwright.technique;

import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How the faults of one athlete in one drill go over the sessions, on which contact each first shows, and where to look for
 * its beginning. A fault that first shows in a late contact is looked for one contact earlier (common practice): what is seen
 * on a contact was mostly done in the flight and the contact before it.
 *
 * @param athleteId whose
 * @param sequence the drill
 * @param sessions by date
 * @param courses one per fault seen, the most frequent first
 * @param map faults over contacts
 */
public record FaultTrends(long athleteId, Sequence sequence, List<Session> sessions, List<Course> courses, FaultMap map) {
  /**
   * A session of this drill.
   *
   * @param date its day
   * @param steps approach steps that were used, ascending: a change of rung changes the task
   * @param judged judged reps
   * @param clean reps without a fault
   */
  public record Session(LocalDate date, List<Integer> steps, int judged, int clean) {}

  /**
   * The share of a session's judged reps that had the fault.
   *
   * @param date of the session
   * @param seen reps with the fault
   * @param judged judged reps
   */
  public record Point(LocalDate date, int seen, int judged) {
    /** 0 to 1. */
    public double share() {
      return seen / (double) judged;
    }
  }

  /**
   * One fault over time.
   *
   * @param key the fault
   * @param points one per session, also those without it
   * @param trend whether it becomes rarer
   * @param firstContacts how often it first showed on contact 1, 2, ...; reps in which the contact was not said are left out
   */
  public record Course(String key, List<Point> points, ShareTrend trend, List<Integer> firstContacts) {
    /** Reps with the fault over all sessions. */
    public int seen() {
      return points.stream().mapToInt(Point::seen).sum();
    }

    /** Judged reps over all sessions. */
    public int judged() {
      return points.stream().mapToInt(Point::judged).sum();
    }

    /**
     * The contact on which it first shows: the middle one (median) of the reps that say where; of two middle ones the earlier,
     * because looking early costs nothing. Empty if no rep says where.
     */
    public Optional<Integer> firstShows() {
      int total = firstContacts.stream().mapToInt(Integer::intValue).sum();
      int upTo = 0;
      for (int i = 0; i < firstContacts.size(); i++) {
        upTo += firstContacts.get(i);
        if (total > 0 && 2 * upTo >= total) {
          return Optional.of(i + 1);
        }
      }
      return Optional.empty();
    }

    /** Where to look for its beginning: one contact earlier; 0 is the run-up. Empty if no rep says where it showed. */
    public Optional<Integer> lookAt() {
      return firstShows().map(c -> c - 1);
    }

    /** Where to look, in a sentence; the foot is that of the drill. */
    public String whereToLook(Sequence sequence) {
      Optional<Integer> shows = firstShows();
      if (shows.isEmpty()) {
        return "No rep says on which contact it first shows. Tap the contact next time.";
      }
      int contact = shows.get();
      if (contact == 1) {
        return "It is there from contact 1: look at the run-up and the take-off from the mark.";
      }
      return "It first shows on contact " + named(sequence, contact) + ": look one contact earlier, at contact " + named(sequence, contact - 1)
          + " and the flight after it.";
    }

    private static String named(Sequence sequence, int contact) {
      if (contact > sequence.size()) {
        return Integer.toString(contact);
      }
      Foot foot = sequence.contacts().get(contact - 1);
      return contact + " (" + foot.label() + ")";
    }
  }

  /** One for each athlete and drill (same feet in the same order) found in the reps; order of first appearance. */
  public static List<FaultTrends> of(List<JudgedRep> reps) {
    Map<String, List<JudgedRep>> groups = new LinkedHashMap<>();
    for (JudgedRep rep : reps) {
      groups.computeIfAbsent(rep.athleteId() + " " + rep.sequence().letters(), k -> new ArrayList<>()).add(rep);
    }
    return groups.values().stream().map(FaultTrends::ofDrill).toList();
  }

  /**
   * The trends of reps that belong together: one athlete, one drill, or drills that the caller takes as one family. Contacts
   * are named after the longest of the sequences.
   *
   * @param reps at least one
   */
  public static FaultTrends ofDrill(List<JudgedRep> reps) {
    Map<LocalDate, List<JudgedRep>> days = new TreeMap<>();
    reps.forEach(r -> days.computeIfAbsent(r.date(), d -> new ArrayList<>()).add(r));
    List<Session> sessions = new ArrayList<>();
    days.forEach(
        (date, there) ->
            sessions.add(
                new Session(
                    date,
                    there.stream().map(JudgedRep::approachSteps).distinct().sorted().toList(),
                    there.size(),
                    (int) there.stream().filter(JudgedRep::clean).count())));
    FaultMap map = FaultMap.of(reps);
    List<Course> courses = map.rows().stream().map(row -> course(row.key(), days, map.contacts(), reps)).toList();
    Sequence longest = reps.stream().map(JudgedRep::sequence).max(Comparator.comparingInt(Sequence::size)).orElseThrow();
    return new FaultTrends(reps.get(0).athleteId(), longest, List.copyOf(sessions), courses, map);
  }

  private static Course course(String key, Map<LocalDate, List<JudgedRep>> days, int contacts, List<JudgedRep> reps) {
    List<Point> points = new ArrayList<>();
    days.forEach((date, there) -> points.add(new Point(date, (int) there.stream().filter(r -> r.has(key)).count(), there.size())));
    Integer[] first = new Integer[contacts];
    Arrays.fill(first, 0);
    reps.forEach(r -> r.firstContact(key).ifPresent(c -> first[c - 1]++));
    ShareTrend trend =
        ShareTrend.of(points.stream().map(p -> new ShareTrend.Session(p.date().toEpochDay(), p.judged(), p.seen())).toList());
    return new Course(key, List.copyOf(points), trend, List.of(first));
  }
}
