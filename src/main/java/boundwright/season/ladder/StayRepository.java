package boundwright.season.ladder;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What the climb needs of the log. */
public interface StayRepository {
  /**
   * Stays of the whole squad, as the decisions on the ladder and the reps tell them.
   *
   * @param today days after it are passed over
   */
  List<SquadStay> stays(LocalDate today);

  /** How often each athlete came, by the athlete's number, from a day on to another, both included. */
  Map<Long, Turnout> turnout(LocalDate from, LocalDate to);
}
