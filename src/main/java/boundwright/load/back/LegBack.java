package boundwright.load.back;

import boundwright.footfall.Foot;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A way back as the guard needs it: where it stands on the last day that is known, and how it would go on.
 *
 * @param leg which leg
 * @param begun first day
 * @param until first day on which it no longer holds, or null while it runs
 * @param stages its stages
 * @param formerUnits the leg's week before the days off [standing-bound contacts]
 * @param stage where it stands on {@code known}, 0 the first
 * @param since from which day
 * @param known the last day of which is known what was felt and entered
 * @param steppedBack the pain that led back to the stage, or null
 */
public record LegBack(
    Foot leg, LocalDate begun, @Nullable LocalDate until, Stages stages, double formerUnits, int stage, LocalDate since, LocalDate known,
    @Nullable LocalDate steppedBack) {
  /**
   * As it stands on a day.
   *
   * @param felt while it ran, any order
   * @param heldAgain the day from which a clinician ended the newest medical hold that was opened while it ran, or null: it begins anew then
   */
  public static LegBack of(WayBack way, LocalDate today, List<Felt> felt, @Nullable LocalDate heldAgain) {
    LocalDate known = today.isBefore(way.begun()) ? way.begun() : today;
    WayBack.Stand stand = way.on(known, felt, heldAgain);
    WayBack.End end = way.end();
    return new LegBack(
        way.leg(), way.begun(), end == null ? null : end.date(), way.stages(), way.formerUnits(), stand.stage(), stand.since(), known, stand.steppedBack());
  }

  /** Where it stands on the last day that is known. */
  public WayBack.Stand stand() {
    return new WayBack.Stand(stage, since, steppedBack);
  }

  /** Whether it is this one: on the day on which one is ended another may begin for the same leg. */
  public boolean isOf(WayBack way) {
    return leg == way.leg() && begun.equals(way.begun()) && Objects.equals(until, way.end() == null ? null : way.end().date());
  }

  /** Whether it holds on a day: while it runs and the former week is not reached. */
  public boolean holds(LocalDate day) {
    return !day.isBefore(begun) && (until == null || day.isBefore(until)) && stageOn(day) < stages.count();
  }

  /**
   * The stage that a day is judged by: up to the last known day where it stands, later where it will be if every week goes well, a stage a
   * week and never sooner.
   */
  public int stageOn(LocalDate day) {
    if (!day.isAfter(known)) {
      return stage;
    }
    LocalDate next = since.plusDays(Stages.LEAST_DAYS);
    LocalDate earliest = next.isAfter(known) ? next : known.plusDays(1);
    if (day.isBefore(earliest)) {
      return stage;
    }
    return (int) Math.min(stages.count(), stage + 1 + ChronoUnit.DAYS.between(earliest, day) / Stages.LEAST_DAYS);
  }

  /** The most of seven days up to a day [standing-bound contacts]. */
  public double week(LocalDate day) {
    return stages.share(stageOn(day)) * formerUnits;
  }

  /** Where it stands, in a sentence. */
  public String said() {
    return Notes.capital(leg.label()) + " leg: stage " + Math.min(stage + 1, stages.count()) + " of " + stages.count() + ", " + Math.round(100 * stages.share(stage))
        + " % of its former week, since " + since + ".";
  }

  /** What the stage of a day asks of one day [standing-bound contacts]. */
  public double perDay(LocalDate day) {
    return stages.dayShare(stageOn(day)) * formerUnits;
  }
}
