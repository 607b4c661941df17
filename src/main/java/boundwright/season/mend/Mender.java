package boundwright.season.mend;

import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.check.GuardCheck;
import boundwright.season.mend.Deepening.Change;
import boundwright.season.solve.Beam;
import boundwright.season.solve.Joint;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;

/**
 * Puts a published plan right after something happened: what was published holds wherever it still can; days that are refused now are
 * mended by as few other days as can be found, those of the next days last; what is over is fixed. Nothing is published here.
 */
public final class Mender {
  private static final int WIDTH = 40;
  /** How far before the first refused day a search of many days begins. */
  private static final int BEFORE_DAYS = 21;

  private final SeasonInput input;
  private final SeasonPlan published;
  private final Done done;
  private final SeasonPlanner planner;
  private final BooleanSupplier stop;

  /**
   * For a season as it is now: holds, closed days, meets and approaches already changed.
   *
   * @param stop asked now and then; ends the search of few days, so that many are chosen anew along a beam
   */
  public Mender(SeasonInput input, List<List<Climb>> climbs, SeasonPlan published, Done done, BooleanSupplier stop) {
    this.input = input;
    this.published = published;
    this.done = done;
    this.stop = stop;
    this.planner = new SeasonPlanner(input, climbs, null, published, done, 1);
  }

  /**
   * A plan that is right again.
   *
   * @param plan not published yet
   * @param differences days that are not as they were published
   * @param refused what the guard itself refuses all the same of athletes whose days changed or were refused; the whole plan is judged
   *     again before it is published, and one with any is not
   * @param left how much of it the rules could not mend: a taper that no change of the open days reaches
   */
  public record Mended(SeasonPlan plan, List<Difference> differences, List<GuardCheck.Judged> refused, long left) {
    /** Takes copies. */
    public Mended {
      differences = List.copyOf(differences);
      refused = List.copyOf(refused);
    }
  }

  /** Mends. */
  public Mended mend() {
    Joint joint = asPublished();
    int today = Math.max(0, input.number(done.today()));
    int noticed = today + input.rules().noticeDays();
    Set<Long> touched = new HashSet<>();
    for (int a = 0; a < joint.athletes(); a++) {
      if (joint.line(a).total()[Level.REFUSED.at()] > 0) {
        touched.add(input.squad().get(a).id());
        mend(joint, a, today, noticed);
      }
    }
    SeasonPlan plan = planner.plan(joint);
    List<Difference> differences = Difference.between(published, plan, done.today());
    differences.forEach(d -> touched.add(d.athleteId()));
    return new Mended(plan, differences, new GuardCheck(input).refused(plan, done, touched), joint.total()[Level.REFUSED.at()]);
  }

  /** What was published, wherever it may still be chosen and the place takes so many; else the like of it, else rest. */
  private Joint asPublished() {
    List<YearProblem> problems = planner.problems();
    Joint joint = new Joint(problems, input.venues());
    for (int a = 0; a < joint.athletes(); a++) {
      YearProblem p = problems.get(a);
      for (int t = 0; t < p.days(); t++) {
        int at = p.published(t);
        if (at >= 0 && joint.fits(a, t, p.choices(t).get(at).venue())) {
          joint.choose(a, t, p.choices(t).get(at));
        } else if (at != -1) {
          joint.choose(a, t, like(joint, a, t));
        }
      }
    }
    return joint;
  }

  /** The choice of the same kind with about as many contacts, at another place if it must be. */
  private Choice like(Joint joint, int a, int t) {
    YearProblem p = joint.line(a).problem();
    return published
        .of(p.member().id())
        .flatMap(y -> y.on(input.day(t)))
        .flatMap(
            was ->
                p.choices(t).stream()
                    .filter(c -> c.session() != null && c.session().kind() == was.kind() && joint.fits(a, t, c.venue()))
                    .min(Comparator.comparingInt(c -> Math.abs(c.contacts() - was.contacts()))))
        .orElse(p.choices(t).get(0));
  }

  private void mend(Joint joint, int a, int today, int noticed) {
    List<Change> changes = new Deepening(joint, a, today, noticed, stop).search();
    if (changes != null) {
      changes.forEach(c -> joint.choose(a, c.day(), c.to()));
      return;
    }
    many(joint, a, today);
    rest(joint, a, today);
  }

  /**
   * The days from shortly before the first refused one to the end of the season chosen anew, changed days counted before all else but
   * refusals; where that leaves something refused, without regard to what was published.
   */
  private static void many(Joint joint, int a, int today) {
    int last = joint.line(a).problem().days() - 1;
    YearLine.Refusal first = joint.line(a).refusal(today);
    int from = Math.max(today, (first == null ? last : first.day()) - BEFORE_DAYS);
    YearLine few = new Beam(joint, WIDTH, new SplittableRandom(1), 0).fewChanges(a, from, last);
    if (few != null) {
      joint.replace(a, few);
    }
    if (joint.line(a).total()[Level.REFUSED.at()] > 0) {
      YearLine anew = new Beam(joint, WIDTH, new SplittableRandom(1), 0).search(a, from, last);
      if (anew != null) {
        joint.replace(a, anew);
      }
    }
  }

  /**
   * Where nothing else helps, refused days are days of rest, and before a meet that is refused, or a taper that is none, the last session
   * before it; a day of rest is refused by no rule of the guard.
   */
  private static void rest(Joint joint, int a, int today) {
    YearLine line = joint.line(a);
    for (YearLine.Refusal r = line.refusal(today); r != null; r = line.refusal(today)) {
      int day = r.day();
      while (day >= today && (line.chosen(day).rest() || line.problem().choices(day).size() == 1)) {
        day--;
      }
      if (day < today) {
        return;
      }
      joint.choose(a, day, line.problem().choices(day).get(0));
    }
  }
}
