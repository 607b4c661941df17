package boundwright.readiness;

import boundwright.quantity.RefusedException;
import java.util.Locale;

/**
 * What is asked before two steps are added; settings (standing of the defaults: judgement; what they let through in whole
 * seasons is simulated, see {@code docs/gate.md}).
 *
 * @param clean which reps count and how many have to be clean
 * @param stay how long an approach is kept at least
 * @param loss when an athlete is sent back
 * @param speed when the speed counts as used, or as not used
 * @param fading when landings count as shrinking within a day
 */
public record GateRules(Clean clean, Stay stay, Loss loss, Speed speed, Fading fading) {
  /** Sessions of a whole stay on one approach for which the errors are set: twelve weeks of two (judgement). */
  public static final int STAY_SESSIONS = 24;

  /** The defaults. */
  public static final GateRules DEFAULT =
      new GateRules(
          new Clean(56, 12, 8, 0.70, 0.05, 0.75, 0.80, 2, 4, 0.75),
          new Stay(14, 21, 14),
          new Loss(4, 8, 0.10, 0.50),
          new Speed(0.05, 0.03),
          new Fading(0.03, 0.975, 0.70));

  /** How far back reps that were looked at count [days]. */
  public int days() {
    return clean.days();
  }

  /**
   * Which reps count and how many have to be clean.
   *
   * @param days how far back reps that were looked at count
   * @param reps how many are needed at least
   * @param sessions newest sessions that count, so that old faults of a learner fade
   * @param notShare a true clean share that must not pass, 0 to 1
   * @param stayError in how large a share of whole stays of {@link #STAY_SESSIONS} sessions it may pass all the same
   * @param shareAbove besides, the true clean share must lie above this ...
   * @param shareChance ... with at least this chance
   * @param passDays days on which {@code passDayShare} must have been reached
   * @param passDayReps reps that make such a day
   * @param passDayShare clean share of such a day
   */
  public record Clean(
      int days, int reps, int sessions, double notShare, double stayError, double shareAbove, double shareChance, int passDays, int passDayReps,
      double passDayShare) {
    /** Refuses rules that ask for nothing. */
    public Clean {
      count("How far back reps count", "days", days, 1, 400);
      count("The reps needed", "reps", reps, 1, 500);
      count("The sessions that count", "sessions", sessions, 1, 60);
      share("The clean share that must not pass", notShare, 0.05, 0.95);
      share("The error over a stay", stayError, 0.001, 0.5);
      share("The true clean share asked for", shareAbove, 0, 0.99);
      share("The chance of it", shareChance, 0, 0.999);
      count("The good days asked for", "days", passDays, 1, 60);
      count("The reps of a good day", "reps", passDayReps, 1, 100);
      share("The clean share of a good day", passDayShare, 0, 1);
    }
  }

  /**
   * How long an approach that is new to an athlete is kept at least: tissue adapts slower than skill (judgement).
   *
   * @param shortDays below {@value #LONG_FROM} steps [days]
   * @param longDays from {@value #LONG_FROM} steps [days]
   * @param breakDays after more days than this without a rep from there or farther, half of it is asked again
   */
  public record Stay(int shortDays, int longDays, int breakDays) {
    /** Steps from which the longer stay holds. */
    public static final int LONG_FROM = 6;

    /** Refuses stays out of range. */
    public Stay {
      count("The least stay below 6 steps", "days", shortDays, 0, 180);
      count("The least stay from 6 steps", "days", longDays, 0, 180);
      count("What counts as a break", "days", breakDays, 2, 180);
    }

    /** The least stay at an approach that is new [days]. */
    public int days(int steps) {
      return steps < LONG_FROM ? shortDays : longDays;
    }
  }

  /**
   * When an athlete is sent back: after a clear loss only.
   *
   * @param sessions newest sessions that are held against the earlier ones from the same approach
   * @param reps reps needed among the newest, and among the earlier
   * @param error in how large a share of whole stays a steady athlete may be sent back by mistake
   * @param legFaults share of the reps of the newest two sessions with a fault that loads a leg, above which it is told at once
   */
  public record Loss(int sessions, int reps, double error, double legFaults) {
    /** Refuses rules that send everybody back. */
    public Loss {
      count("The newest sessions for a loss", "sessions", sessions, 1, 60);
      count("The reps for a loss", "reps", reps, 1, 500);
      share("The error of sending back", error, 0.001, 0.5);
      share("The share of faults that load a leg", legFaults, 0.1, 0.95);
    }
  }

  /**
   * When the speed counts as used.
   *
   * @param error in how large a share of whole stays a gain of nothing may be called used, and one of {@code leastGain} not used
   * @param leastGain least gain of two steps that is worth their speed [m a flight]
   */
  public record Speed(double error, double leastGain) {
    /** Refuses what cannot be told apart. */
    public Speed {
      share("The error of speed used", error, 0.001, 0.5);
      if (!(leastGain >= 0 && leastGain <= 0.5)) {
        throw new RefusedException(
            String.format(Locale.ROOT, "A least gain of %.3f m a flight is out of range: 0 to 0.5 m. Usual is 0.03 m.", leastGain));
      }
    }
  }

  /**
   * When landings count as shrinking within a day.
   *
   * @param most most that they may shrink over ten reps, as a share
   * @param sure how sure it must be that they shrink at all, 0.5 to 0.999
   * @param lateShare clean share of the later half of each day's reps, where lengths are few
   */
  public record Fading(double most, double sure, double lateShare) {
    /** Refuses shares out of range. */
    public Fading {
      share("How far landings may shrink", most, 0, 0.5);
      share("How sure a shrinking must be", sure, 0.5, 0.999);
      share("The clean share of the later reps", lateShare, 0, 1);
    }
  }

  private static void count(String what, String unit, int value, int least, int most) {
    if (value < least || value > most) {
      throw new RefusedException(what + " cannot be " + value + " " + unit + ": " + least + " to " + most + ".");
    }
  }

  private static void share(String what, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new RefusedException(what + " cannot be " + value + ": " + least + " to " + most + ". 80 % is written 0.8.");
    }
  }
}
