package boundwright.load.back;

import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The way back of one leg.
 *
 * @param id number in the store, 0 before it is stored
 * @param leg which leg
 * @param begun first day
 * @param stages its stages
 * @param formerUnits the leg's week before the days off [standing-bound contacts], {@value #LEAST_FORMER} to {@value #MOST_FORMER}
 * @param daysOff days without a jump contact of this leg before it, 0 to {@value #MOST_OFF}
 * @param clearance who allowed bounding again
 * @param steps that a coach entered, any order
 * @param end why and when it ended, or null while it runs
 */
public record WayBack(
    long id, Foot leg, LocalDate begun, Stages stages, double formerUnits, int daysOff, Clearance clearance, List<BackStep> steps, @Nullable End end) {
  /** Least former week. */
  public static final int LEAST_FORMER = 5;
  /** Most of one leg. */
  public static final int MOST_FORMER = 5000;
  /** Most days off. */
  public static final int MOST_OFF = 1500;

  /**
   * Who said that the leg may be loaded again. Never the program, and after a hold never a coach.
   *
   * @param by the clinician who ended the hold; where there was none, whoever answers for the beginning
   * @param on from which day
   * @param hold whether a medical hold was ended
   */
  public record Clearance(String by, LocalDate on, boolean hold) {
    /** Refuses an empty name. */
    public Clearance {
      by = BackStep.named("who allowed it", by);
    }
  }

  /**
   * The end.
   *
   * @param date first day on which it no longer holds
   * @param by who ended it
   * @param why in their words, 1 to 200 characters
   */
  public record End(LocalDate date, String by, String why) {
    /** Refuses an end without name or reason. */
    public End {
      by = BackStep.named("who ends it", by);
      why = why.strip();
      if (why.isEmpty() || why.length() > 200) {
        throw new RefusedException("The reason for an end has 1 to 200 characters; this one has " + why.length() + ". No diagnosis belongs in it.");
      }
    }
  }

  /** Refuses figures that no leg has, and an end before the beginning. */
  public WayBack {
    steps = steps.stream().sorted(Comparator.comparing(BackStep::date).thenComparingLong(BackStep::id)).toList();
    if (!(formerUnits >= LEAST_FORMER && formerUnits <= MOST_FORMER)) {
      throw new RefusedException(
          "A former week of " + Math.round(formerUnits) + " standing-bound contacts of the " + leg.label() + " leg is out of range: " + LEAST_FORMER + " to " + MOST_FORMER
              + ". Enter the leg's usual week before the days off.");
    }
    if (daysOff < 0 || daysOff > MOST_OFF) {
      throw new RefusedException(daysOff + " days off are out of range: 0 to " + MOST_OFF + ". Check the first day.");
    }
    if (clearance.on().isAfter(begun)) {
      throw new RefusedException(
          "Bounding is allowed from " + clearance.on() + " on, by " + clearance.by() + "; a way back cannot begin before, on " + begun + ".");
    }
    if (end != null && end.date().isBefore(begun)) {
      throw new RefusedException("The way back began on " + begun + "; it cannot end before, on " + end.date() + ".");
    }
  }

  /** Whether it runs on a day. */
  public boolean runs(LocalDate day) {
    return !day.isBefore(begun) && (end == null || day.isBefore(end.date()));
  }

  /**
   * Where it stands.
   *
   * @param stage 0 the first
   * @param since from which day; clean days are counted from it on
   * @param steppedBack the pain that led back to it, or null if that was not how it was reached
   */
  public record Stand(int stage, LocalDate since, @Nullable LocalDate steppedBack) {
    /** Days that the stage has lasted before a day. */
    public int days(LocalDate day) {
      return (int) Math.max(0, ChronoUnit.DAYS.between(since, day));
    }
  }

  /**
   * Where it stands on a day, by what was entered and felt up to it. A pain that is too much steps one stage back on the day it was
   * felt, and days of it in a row are one; the stage is then begun anew the day after.
   *
   * @param felt any order
   */
  public Stand on(LocalDate day, List<Felt> felt) {
    return on(day, felt, null);
  }

  /**
   * As {@link #on(LocalDate, List)}, of a way that a medical hold stopped on its way.
   *
   * @param heldAgain the day from which a clinician ended that hold, or null: the way begins anew on it
   */
  public Stand on(LocalDate day, List<Felt> felt, @Nullable LocalDate heldAgain) {
    LocalDate from = heldAgain == null || heldAgain.isBefore(begun) ? begun : heldAgain;
    List<LocalDate> breaches = breaches(felt).stream().filter(d -> !d.isAfter(day) && !d.isBefore(from)).toList();
    List<BackStep> entered = steps.stream().filter(s -> !s.date().isAfter(day) && !s.date().isBefore(from)).toList();
    Stand now = new Stand(0, from, null);
    int b = 0;
    int s = 0;
    while (b < breaches.size() || s < entered.size()) {
      // A step of the same day came first: what was felt after it takes it back.
      if (s < entered.size() && (b >= breaches.size() || !entered.get(s).date().isAfter(breaches.get(b)))) {
        BackStep step = entered.get(s++);
        int to = step.kind() == BackStep.Kind.ON ? Math.min(stages.count(), now.stage() + 1) : Math.max(0, now.stage() - 1);
        now = new Stand(to, step.date(), null);
      } else {
        LocalDate d = breaches.get(b++);
        now = new Stand(Stages.after(now.stage(), Grade.TOO_MUCH), d.plusDays(1), d);
      }
    }
    return now;
  }

  /** First days of pain that was too much while it ran; days in a row are one. */
  private List<LocalDate> breaches(List<Felt> felt) {
    List<LocalDate> days = felt.stream().filter(f -> f.grade() == Grade.TOO_MUCH && runs(f.date())).map(Felt::date).distinct().sorted().toList();
    List<LocalDate> out = new ArrayList<>();
    LocalDate last = null;
    for (LocalDate d : days) {
      if (last == null || d.isAfter(last.plusDays(1))) {
        out.add(d);
      }
      last = d;
    }
    return out;
  }
}
