package boundwright.load;

import boundwright.footfall.Foot;
import boundwright.load.Finding.Rule;
import boundwright.load.account.History;
import boundwright.load.account.OwnWeeks.Legs;
import boundwright.load.account.OwnWeeks.Part;
import boundwright.load.back.LegBack;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What a leg on its way back may carry: seven days up to today beside its stage's share of the former week, a day beside the stage's day,
 * and the days between. It stands for the weekly rise, which is judged beside it, and the stricter of the two holds. A meet is never
 * refused for it, only what was trained. It gives no leave: a hold, a sign to refer and pain are judged before it.
 */
final class BackRules {
  private static final double ROUNDING = 1e-6;

  private final List<LegBack> backs;
  private final History past;
  private final LocalDate day;
  private final Legs week;

  /**
   * On a day.
   *
   * @param past days before it
   * @param week of the six days before it
   */
  BackRules(LegCare care, History past, LocalDate day, Legs week) {
    this.backs = care.backs().stream().filter(b -> b.holds(day)).toList();
    this.past = past;
    this.day = day;
    this.week = week;
  }

  /** One for each leg on its way back. */
  List<Finding> all(DaySum today, ToDoubleFunction<Part> ownRefused) {
    return backs.stream().map(b -> finding(b, today, ownRefused.applyAsDouble(part(b)))).toList();
  }

  /** The strictest of all. */
  Answer answer(DaySum today) {
    return backs.stream().map(b -> answer(b, today)).reduce(Answer.ALLOWED, Answer::or);
  }

  private static Part part(LegBack b) {
    return b.leg() == Foot.RIGHT ? Part.RIGHT : Part.LEFT;
  }

  private double sevenDays(LegBack b, Legs today) {
    return week.of(part(b)) + today.of(part(b));
  }

  private Answer answer(LegBack b, DaySum today) {
    if (above(sevenDays(b, today.withoutMeet().get(0)), b.week(day)) || (tooSoon(b, today) && !today.onlyMeet())) {
      return Answer.REFUSED;
    }
    boolean much = above(sevenDays(b, today.units().get(0)), b.week(day)) || above(today.units().get(0).of(part(b)), b.perDay(day));
    return much || tooSoon(b, today) ? Answer.CAUTION : Answer.ALLOWED;
  }

  private static boolean above(double value, double limit) {
    return value > limit + ROUNDING;
  }

  /** Whether the leg is loaded again before the stage's rest is over. */
  private boolean tooSoon(LegBack b, DaySum today) {
    return today.jumps() > 0 && today.units().get(0).of(part(b)) > 0 && daysSince(b) < b.stages().restDays(b.stageOn(day));
  }

  private long daysSince(LegBack b) {
    return past.days().stream()
        .filter(d -> d.contacts(b.leg()) > 0)
        .mapToLong(d -> ChronoUnit.DAYS.between(d.date(), day))
        .min()
        .orElse(Long.MAX_VALUE);
  }

  private Finding finding(LegBack b, DaySum today, double ownRefused) {
    Answer answer = answer(b, today);
    int stage = b.stageOn(day);
    double limit = b.week(day);
    double now = sevenDays(b, today.units().get(0));
    boolean soon = tooSoon(b, today);
    int rest = b.stages().restDays(stage);
    boolean dayOnly = !soon && !above(now, limit) && answer == Answer.CAUTION;
    String head = Notes.capital(b.leg().label()) + " leg on its way back, stage " + (stage + 1) + " of " + b.stages().count() + ": ";
    if (soon) {
      return new Finding(Rule.WAY_BACK, answer, 24 * daysSince(b), 24 * rest, "hours",
          head + 24 * daysSince(b) + " hours since the leg was last loaded; " + (answer == Answer.REFUSED ? "refused" : "caution") + " below " + 24 * rest + ". Rest the leg today.",
          LoadSources.WAY_BACK);
    }
    String said =
        dayOnly
            ? whole(today.units().get(0).of(part(b))) + " standing-bound contacts today; caution above " + whole(b.perDay(day)) + ", half of the stage's week."
            : whole(now) + " standing-bound contacts in seven days; refused above " + whole(limit) + ", " + whole(100 * b.stages().share(stage))
                + " % of the leg's former week.";
    String stricter = limit <= ownRefused ? " It stands for the weekly rise." : " The weekly rise is stricter here and holds.";
    return new Finding(Rule.WAY_BACK, answer, dayOnly ? today.units().get(0).of(part(b)) : now, dayOnly ? b.perDay(day) : limit, "standing-bound contacts",
        head + said + stricter + (answer == Answer.ALLOWED ? "" : " Take contacts off this leg."), LoadSources.WAY_BACK);
  }

  private static String whole(double x) {
    return String.valueOf(Math.round(x));
  }
}
