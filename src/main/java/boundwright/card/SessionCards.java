package boundwright.card;

import boundwright.athlete.Athlete;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.load.LoadDesk;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.Rungs;
import boundwright.runway.Tapes;
import boundwright.technique.Teaching;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Makes the card of the day for one athlete or for the squad. */
public final class SessionCards {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

  /** The usual cautions; common practice. */
  static final List<String> CAUTIONS =
      List.of(
          "Soft ground first: level grass, then a sprung floor or a raised runway; the ordinary track only if it must be, never"
              + " concrete. Sand dug, raked and clear before every rep.",
          "Warmed up before the first bound. Add speed only when the present speed is mastered. Stop when the foot strike goes.",
          "Stop at any pain. Local rules, and what licensed medical staff say of this athlete, go before this card.");

  /** The advice that a card needs. */
  interface Marks {
    MarkAdvice advise(Athlete athlete, Sequence sequence, int approachSteps, CoachSettings settings);

    /** The marks of a squad for a piece of a drill, by the athlete's number, each from where they do the drill. */
    default Map<Long, MarkAdvice> advise(List<Athlete> athletes, Sequence piece, Drill drill, CoachSettings settings) {
      Rungs now = rungs();
      return athletes.stream().collect(Collectors.toMap(Athlete::id, a -> advise(a, piece, now.stepsFor(a, drill), settings)));
    }

    Tapes tapes(List<Athlete> athletes, DayPlan plan, CoachSettings settings);

    default Rungs rungs() {
      return Rungs.OWN;
    }

    /** The one verdict of today of each, by number; those who were not asked for are left out. */
    default Map<Long, DayVerdict> days(List<Athlete> athletes) {
      return Map.of();
    }

    /** What each leg of an athlete that is on its way back may carry today, in a few words. */
    default List<String> backs(Athlete athlete) {
      return List.of();
    }

    /** The day as it stands on the card. */
    default SessionCard.Day day(Athlete athlete, @Nullable DayVerdict verdict) {
      return SessionCard.Day.of(verdict, verdict != null && verdict.back() && !verdict.held() ? backs(athlete) : List.of());
    }
  }

  private final Marks marks;
  private final Clock clock;
  private final Supplier<Teaching> teaching;

  /** What has to be known before a drill: on the flat nothing of sand. */
  static List<String> warnings(MarkAdvice advice, Drill drill, CoachSettings settings) {
    return drill.inSand() ? advice.warnings() : MarkAdvisor.flatWarnings(advice, settings.facility().surface(), settings);
  }

  /**
   * Marks come from {@code advisor}, verdicts from {@code load}; {@code clock} tells the day that is printed, {@code teaching} what to
   * look for.
   *
   * @param backs what each leg of an athlete that is on its way back may carry on that day, in a few words
   */
  public SessionCards(MarkAdvisor advisor, LoadDesk load, Function<Athlete, List<String>> backs, Clock clock, Supplier<Teaching> teaching) {
    this(
        new Marks() {
          @Override
          public MarkAdvice advise(Athlete athlete, Sequence sequence, int approachSteps, CoachSettings settings) {
            return advisor.advise(athlete, sequence, approachSteps, settings);
          }

          @Override
          public Map<Long, MarkAdvice> advise(List<Athlete> athletes, Sequence piece, Drill drill, CoachSettings settings) {
            return advisor.advise(athletes, piece, drill, settings);
          }

          @Override
          public Tapes tapes(List<Athlete> athletes, DayPlan plan, CoachSettings settings) {
            return advisor.tapes(athletes, plan, settings);
          }

          @Override
          public Rungs rungs() {
            return advisor.rungs();
          }

          @Override
          public Map<Long, DayVerdict> days(List<Athlete> athletes) {
            return load.days(athletes, LocalDate.now(clock));
          }

          @Override
          public List<String> backs(Athlete athlete) {
            return backs.apply(athlete);
          }
        },
        clock,
        teaching);
  }

  SessionCards(Marks marks, Clock clock, Supplier<Teaching> teaching) {
    this.marks = marks;
    this.clock = clock;
    this.teaching = teaching;
  }

  /**
   * The card: one athlete's if there is one, the squad's if there are more.
   *
   * @throws RefusedException if there is no athlete or no drill
   */
  public SessionCard of(List<Athlete> athletes, DayPlan plan, CoachSettings settings) {
    return of(athletes, plan, settings, "");
  }

  /** As {@link #of(List, DayPlan, CoachSettings)}; {@code footnote} is printed at the end, for example that the squad is invented. */
  public SessionCard of(List<Athlete> athletes, DayPlan plan, CoachSettings settings, String footnote) {
    if (athletes.isEmpty()) {
      throw new RefusedException("A session card needs an athlete, and there are 0. Choose one, or enter the squad first.");
    }
    if (plan.drills().isEmpty()) {
      throw new RefusedException("The plan of the day has 0 drills, and a card needs at least 1. Add a sequence, for example RRL x2.");
    }
    CutPlan cut = CutPlan.of(plan, settings.setContacts());
    boolean alone = athletes.size() == 1;
    return new SessionCard(
        plan.title(),
        DAY.format(LocalDate.now(clock)),
        settings.facility().name(),
        settings.unit(),
        alone ? new AthletePages(marks, settings).page(athletes.get(0), cut) : null,
        alone ? null : new SquadPages(marks, settings).page(athletes, cut, plan.title()),
        teaching.get().lookFor(),
        CAUTIONS,
        footnote);
  }

  /** {@code Legs level: 24 right, 24 left.} */
  static String balance(int right, int left) {
    return right == left
        ? "Legs level: " + right + " right, " + left + " left."
        : right + " right, " + left + " left: " + Notes.counted(Math.abs(right - left), "contact") + " more on the "
            + (right > left ? "right" : "left") + ", as level as whole sets allow.";
  }

  static String dose(int sets, int reps) {
    return Notes.counted(sets, "set") + " of " + reps;
  }
}
