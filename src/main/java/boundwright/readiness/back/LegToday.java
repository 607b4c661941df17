package boundwright.readiness.back;

import boundwright.load.LegCare.MedicalHold;
import boundwright.load.back.BackState;
import boundwright.load.back.LegBack;
import boundwright.load.back.WayBack;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What a leg on its way back may carry on a day, told the same wherever the athlete stands.
 *
 * @param way what was entered
 * @param leg where the guard sees it
 * @param state where it stands on the morning of {@code today}
 * @param today the day
 * @param hold the medical hold that stands, so that it waits, or null
 * @param stop why a pain or a sign to refer stops bounding today, or null
 * @param week of the leg in seven days so far, today included [standing-bound contacts]
 * @param done of the leg today so far [standing-bound contacts]
 */
public record LegToday(
    WayBack way, LegBack leg, BackState state, LocalDate today, @Nullable MedicalHold hold, @Nullable String stop, double week, double done) {
  /** Whether a medical hold stands. */
  public boolean held() {
    return hold != null;
  }

  /** Whether it runs. */
  public boolean runs() {
    return way.end() == null;
  }

  /** Whether the former week is reached. */
  public boolean reached() {
    return state.stage() >= way.stages().count();
  }

  /** Whether the leg may be loaded today by its rest; a hold and pain stand above it. */
  public boolean rested() {
    return state.sinceLoaded() >= restDays();
  }

  private int restDays() {
    return way.stages().restDays(Math.min(state.stage(), way.stages().count() - 1));
  }

  /** Whether what was felt stops the leg today: as the guard judges it, or because the stage to which it stepped back begins only after today. */
  public boolean stopped() {
    return stop != null || (leg.steppedBack() != null && leg.since().isAfter(today));
  }

  /** What is left of seven days [standing-bound contacts]. */
  public double left() {
    return Math.max(0, leg.week(today) - week);
  }

  /** What may still be done today [standing-bound contacts]. */
  public double mostToday() {
    return rested() && !held() && !stopped() ? Math.max(0, Math.min(left(), leg.perDay(today) - done)) : 0;
  }

  /** What is to be done with the leg today, in a sentence. */
  public String said() {
    if (!runs()) {
      return "It is over.";
    }
    if (hold != null) {
      return "A medical hold stands: nothing today. It begins again at the first stage "
          + (hold.clearedOn() == null ? "when a named clinician has ended the hold" : hold.endsSaid()) + ".";
    }
    if (stop != null) {
      return "Rest the leg. " + stop;
    }
    if (stopped()) {
      return "Rest the leg today: the stage to which it stepped back begins on " + leg.since() + ".";
    }
    if (reached()) {
      return "The former week is reached. The usual limits hold; end the way back when licensed medical staff agree.";
    }
    if (today.isBefore(way.begun())) {
      return "It begins on " + way.begun() + ".";
    }
    if (!rested()) {
      return "Rest the leg: " + 24 * restDays() + " hours between its days in this stage, so again on " + today.plusDays(restDays() - (done > 0 ? 0 : state.sinceLoaded())) + ".";
    }
    if (mostToday() < 1) {
      return "Rest the leg: its " + (left() < 1 ? "seven days are" : "day is") + " full.";
    }
    return Notes.capital(upTo("this")) + "; " + Math.round(Math.floor(left())) + " left of its seven days.";
  }

  /** The same in a few words, as it stands beside the verdict of the day; empty when the stage has nothing to say today. */
  public String brief() {
    if (!runs() || today.isBefore(way.begun()) || (reached() && !held() && !stopped())) {
      return "";
    }
    return "Way back: " + (mostToday() < 1 ? "rest the " + way.leg().label() + " leg" + (done > 0 ? ", no more today." : " today.") : upTo("the " + way.leg().label()) + ".");
  }

  private String upTo(String which) {
    return "up to " + Math.round(Math.floor(mostToday())) + (done > 0 ? " more" : "") + " standing-bound contacts on " + which + " leg today";
  }
}
