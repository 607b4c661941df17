package boundwright.season.ladder;

import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.RungDecision;
import boundwright.season.ladder.SquadStay.Beginning;
import boundwright.season.ladder.SquadStay.End;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Puts one athlete's stays in one family together from the decisions on the ladder and the days with reps.
 *
 * <p>A stay is over when the gate had answered <em>add two steps</em>, whatever the coach did then. It began new if the athlete had not
 * been as far in this family before: after a decision, or from standing on the athlete's first day. Any other first stay began before
 * the log as far as is known, and an approach after a step back is not new.
 */
public final class StayLog {
  private final long athleteId;
  private final DrillFamily family;
  private final List<Attended> days;
  private final boolean beginner;
  private final List<SquadStay> out = new ArrayList<>();
  private int farthest = -1;

  /**
   * A day with a rep.
   *
   * @param date the day
   * @param steps of the approach
   */
  public record Attended(LocalDate date, int steps) {}

  private StayLog(long athleteId, DrillFamily family, List<Attended> days, boolean beginner) {
    this.athleteId = athleteId;
    this.family = family;
    this.days = days;
    this.beginner = beginner;
  }

  /**
   * The stays, in order.
   *
   * @param days with reps of the family, in any order
   * @param decisions on the family, oldest first
   * @param now approach steps as they are
   * @param beginner whether the log begins with the athlete's first session
   */
  public static List<SquadStay> of(
      long athleteId, DrillFamily family, List<Attended> days, List<RungDecision> decisions, int now, boolean beginner) {
    StayLog log = new StayLog(athleteId, family, days, beginner);
    int steps = decisions.isEmpty() ? now : decisions.get(0).from();
    LocalDate since = null;
    boolean begun = false;
    for (RungDecision d : decisions) {
      boolean ready = d.gate() == GateAnswer.Decision.ADD_TWO_STEPS;
      if (ready || d.to() != d.from()) {
        log.add(d.from(), since, d.date(), ready ? End.READY : End.LEFT, begun && steps == d.from());
        since = d.date();
        steps = d.to();
        begun = true;
      }
    }
    log.add(now, since, null, End.STILL_THERE, begun && steps == now);
    return List.copyOf(log.out);
  }

  private void add(int steps, @Nullable LocalDate since, @Nullable LocalDate to, End end, boolean decided) {
    List<LocalDate> sessions =
        days.stream()
            .filter(d -> d.steps() == steps && (since == null || !d.date().isBefore(since)) && (to == null || !d.date().isAfter(to)))
            .map(Attended::date)
            .distinct()
            .sorted()
            .toList();
    boolean before = farthest >= steps || (since != null && days.stream().anyMatch(d -> d.steps() >= steps && d.date().isBefore(since)));
    Beginning beginning =
        before ? Beginning.AGAIN : decided || (steps == 0 && beginner) ? Beginning.NEW : Beginning.UNKNOWN;
    out.add(new SquadStay(athleteId, family, steps, sessions, to, beginning, end));
    farthest = Math.max(farthest, steps);
  }
}
