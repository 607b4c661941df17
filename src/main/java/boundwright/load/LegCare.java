package boundwright.load;

import boundwright.athlete.growth.FastGrowth;
import boundwright.load.account.History;
import boundwright.load.back.Felt;
import boundwright.load.back.Grade;
import boundwright.load.back.LegBack;
import boundwright.load.back.WayBack;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What the guard needs to know of an athlete beyond their reps.
 *
 * @param growing whether they are still growing: as the coach judges, and until then under {@value #GROWING_UNDER} by the birth date
 * @param firstSession first day of bounding, or null: the first logged rep
 * @param pains entries, any order
 * @param holds medical holds, open and ended
 * @param backs ways back of single legs, running and ended
 * @param fast that they grow fast by their heights, or did not long ago; null if not
 */
public record LegCare(
    boolean growing, @Nullable LocalDate firstSession, List<Pain> pains, List<MedicalHold> holds, List<LegBack> backs, @Nullable FastGrowth fast) {
  /** Age below which somebody counts as growing until the coach judges otherwise [years] (common practice of the limits for children). */
  public static final int GROWING_UNDER = 16;

  /** Nothing known. */
  public static final LegCare NONE = new LegCare(false, null, List.of(), List.of());

  /** Takes copies. */
  public LegCare {
    pains = List.copyOf(pains);
    holds = List.copyOf(holds);
    backs = List.copyOf(backs);
  }

  /** Of an athlete with no leg on a way back, of whom no heights are known. */
  public LegCare(boolean growing, @Nullable LocalDate firstSession, List<Pain> pains, List<MedicalHold> holds) {
    this(growing, firstSession, pains, holds, List.of(), null);
  }

  /**
   * With ways back as they stand on a day.
   *
   * @param felt every pain at least since the first of them began; {@link #pains} may begin later
   * @param limits of pain
   */
  public LegCare withWays(List<WayBack> ways, List<Pain> felt, Band limits, LocalDate today) {
    List<Felt> graded = felt.stream().map(p -> p.felt(limits, limited())).toList();
    return new LegCare(growing, firstSession, pains, holds, ways.stream().map(w -> LegBack.of(w, today, graded, heldAgain(w, today))).toList(), fast);
  }

  /** The day from which the newest hold that was opened while it ran, and has ended, let it begin anew; null if there was none. */
  private @Nullable LocalDate heldAgain(WayBack way, LocalDate today) {
    return holds.stream()
        .filter(h -> way.runs(h.from()))
        .flatMap(h -> Stream.ofNullable(h.clearedOn()))
        .filter(on -> on.isAfter(way.begun()) && !on.isAfter(today))
        .max(Comparator.naturalOrder())
        .orElse(null);
  }

  /** Whether the limits for growing athletes hold: as the coach judges, or because of fast growth until the limits have risen from it. */
  public boolean limited() {
    return growing || fast != null;
  }

  /**
   * Whole weeks on a day from which the limits of growing athletes rise: since the first session, or the first logged contact; after fast growth
   * they rise anew from its end.
   */
  long weeks(History history, LocalDate day) {
    LocalDate began = firstSession != null ? firstSession : history.first() != null ? history.first() : day;
    long weeks = Math.max(0, ChronoUnit.WEEKS.between(began, day));
    return fast == null ? weeks : Math.min(weeks, fast.weeks(day));
  }

  /** Whether a leg is on its way back on a day. */
  boolean onWayBack(LocalDate day) {
    return backs.stream().anyMatch(b -> b.holds(day));
  }

  /** The hold that stands on a day, see {@link MedicalHold#stands}; of several the one that lasts longest. */
  public Optional<MedicalHold> standing(LocalDate day) {
    return holds.stream().filter(h -> h.stands(day)).max(MedicalHold.BY_END);
  }

  /** The hold that stops bounding on a day, see {@link MedicalHold#holds}; of several the one that lasts longest. */
  public Optional<MedicalHold> holding(LocalDate day) {
    return holds.stream().filter(h -> h.holds(day)).max(MedicalHold.BY_END);
  }

  /**
   * One entry of pain: a number and a body area, no diagnosis.
   *
   * @param id number in the store, 0 before it is stored
   * @param date the day it was felt
   * @param area of the body, 1 to 40 characters
   * @param level 0 to 10
   * @param settled whether it had settled by next morning; null: not known yet
   * @param refer whether one of the signs was there at which one stops and refers to licensed medical staff
   */
  public record Pain(long id, LocalDate date, String area, int level, @Nullable Boolean settled, boolean refer) {
    /** Refuses levels outside 0 to 10 and empty areas. */
    public Pain {
      area = area.strip();
      if (level < 0 || level > 10) {
        throw new RefusedException("A pain of " + level + " is out of range: 0 (none) to 10 (worst there is).");
      }
      if (area.isEmpty() || area.length() > 40) {
        throw new RefusedException("The body area has 1 to 40 characters; this one has " + area.length() + ". Write a word, for example: left shin.");
      }
    }

    /** What the guard says of it: more strictly of a growing athlete's, because the limits were studied in adults. */
    Answer judged(Band limits, boolean growing) {
      if (level > 0 && Boolean.FALSE.equals(settled)) {
        return Answer.REFUSED;
      }
      Answer answer = limits.judge(level);
      if (!growing) {
        return answer;
      }
      return answer == Answer.ALLOWED ? (level > 0 ? Answer.CAUTION : Answer.ALLOWED) : Answer.REFUSED;
    }

    /** What it means for a way back; one that nobody asked about next morning does not count as clean. */
    public Felt felt(Band limits, boolean growing) {
      Grade grade =
          switch (judged(limits, growing)) {
            case REFUSED -> Grade.TOO_MUCH;
            case CAUTION -> Grade.FELT;
            case ALLOWED -> level > 0 && settled == null ? Grade.FELT : Grade.CLEAN;
          };
      return new Felt(date, refer ? Grade.TOO_MUCH : grade);
    }
  }

  /**
   * A stop set for medical reasons. Only a named clinician and a date end it; a coach cannot lift it.
   *
   * @param id number in the store, 0 before it is stored
   * @param from first day
   * @param note who set it and what was told to the coach; no diagnosis
   * @param clearedBy the clinician who ended it, or null while it lasts
   * @param clearedOn the day from which they allow bounding, or null while it lasts
   */
  public record MedicalHold(
      long id, LocalDate from, String note, @Nullable String clearedBy, @Nullable LocalDate clearedOn) {
    /** First those that end first; those that nobody has ended last. */
    static final Comparator<MedicalHold> BY_END =
        Comparator.comparing((MedicalHold h) -> h.clearedOn() == null ? LocalDate.MAX : h.clearedOn());

    /** Refuses an end without a name or without a date, or before the beginning. */
    public MedicalHold {
      boolean named = clearedBy != null && !clearedBy.isBlank();
      if (named != (clearedOn != null)) {
        throw new RefusedException("A medical hold ends with the clinician's name and a date, both. Nothing was changed.");
      }
      if (clearedOn != null && clearedOn.isBefore(from)) {
        throw new RefusedException("The hold began on " + from + "; it cannot end before, on " + clearedOn + ".");
      }
    }

    /** Whether bounding is stopped on this day. */
    public boolean holds(LocalDate day) {
      return !day.isBefore(from) && (clearedOn == null || day.isBefore(clearedOn));
    }

    /** Whether it stops bounding on this day, or no clinician has ended it whenever it begins. */
    public boolean stands(LocalDate day) {
      return clearedOn == null || holds(day);
    }

    /** From when bounding may be allowed again: the day and the clinician where both are entered, else that nobody has ended it. */
    public String endsSaid() {
      return clearedOn == null ? "when a named clinician has ended it, with a date" : "on " + clearedOn + ", the day named by " + clearedBy;
    }

    /** Why no way back begins while it stands. */
    public RefusedException refusesWayBack() {
      return new RefusedException(
          "Medical hold " + id + " stands since " + from + (note.isEmpty() ? "" : " (" + note + ")") + ": a way back begins " + endsSaid() + "."
              + (clearedOn == null ? " Enter both with the hold." : "") + " Nothing was begun.");
    }
  }
}
