package boundwright.season.chance;

import boundwright.quantity.RefusedException;
import boundwright.season.Member;
import boundwright.season.ladder.Turnout;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How often each athlete comes to what is planned, from the attendance log: their own share, drawn towards the squad's as if ten days of it
 * had been seen of everybody, and the squad's towards nine of ten likewise (judgement). Drawn one by one, session by session.
 *
 * @param shares by the athlete's number, 0 to 1
 * @param days that were seen, of all
 */
public record Attendance(Map<Long, Double> shares, int days) {
  private static final double PRIOR_DAYS = 10;

  /** Takes a copy. */
  public Attendance {
    shares = Map.copyOf(shares);
  }

  /** As the log tells it. */
  public static Attendance learned(List<Member> squad, Map<Long, Turnout> turnout) {
    int came = 0;
    int missed = 0;
    for (Member m : squad) {
      Turnout t = turnout.getOrDefault(m.id(), Turnout.UNKNOWN);
      came += t.came();
      missed += t.missed();
    }
    double usual = new Turnout(came, missed).share();
    Map<Long, Double> shares = new HashMap<>();
    for (Member m : squad) {
      Turnout t = turnout.getOrDefault(m.id(), Turnout.UNKNOWN);
      shares.put(m.id(), (t.came() + PRIOR_DAYS * usual) / (t.came() + t.missed() + PRIOR_DAYS));
    }
    return new Attendance(shares, came + missed);
  }

  /** The same for everybody. */
  public static Attendance of(List<Member> squad, double share) {
    if (!(share >= 0 && share <= 1)) {
      throw new RefusedException("An attendance of " + share + " is out of range: 0 to 1. Write 0.9 for nine of ten.");
    }
    Map<Long, Double> shares = new HashMap<>();
    squad.forEach(m -> shares.put(m.id(), share));
    return new Attendance(shares, 0);
  }

  /** Of an athlete. */
  double of(Member m) {
    return shares.getOrDefault(m.id(), 1.0);
  }
}
