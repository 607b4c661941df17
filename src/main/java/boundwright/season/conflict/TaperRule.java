package boundwright.season.conflict;

import boundwright.footfall.Foot;
import boundwright.season.year.Choice;
import boundwright.season.year.YearProblem;
import org.chocosolver.solver.exception.ContradictionException;
import org.chocosolver.solver.variables.IntVar;

/** The load falls before a main meet by the least cut, the meet's own contacts counted, unless there was little before. */
final class TaperRule extends Rule {
  static final int BEFORE_DAYS = 28;

  private final int begins;
  private final long past;
  private final long inPast;
  private final long little;
  private final long share;

  /**
   * Cells from 28 days before the taper, or the season's first, to the meet.
   *
   * @param begins the place among the cells of the taper's first day
   */
  TaperRule(IntVar[] cells, Choice[][] options, YearProblem p, YearProblem.Taper taper, int begins) {
    super(cells, options);
    this.begins = begins;
    this.little = 2L * p.startWeek();
    this.share = (long) (taper.meet() - taper.from() + 1) * taper.mostMille();
    long sum = 0;
    for (int day = taper.from() - BEFORE_DAYS; day < Math.min(0, taper.from()); day++) {
      sum += day >= -YearProblem.before() ? (long) p.past(Foot.RIGHT, day) + p.past(Foot.LEFT, day) : 0;
    }
    this.past = sum;
    this.inPast = inPast(p, taper);
  }

  private static long inPast(YearProblem p, YearProblem.Taper taper) {
    long sum = 0;
    for (int day = Math.max(-YearProblem.before(), taper.from()); day < 0; day++) {
      sum += (long) p.past(Foot.RIGHT, day) + p.past(Foot.LEFT, day);
    }
    return sum;
  }

  private boolean broken(long before, long in) {
    return 28_000 * in > before * share;
  }

  @Override
  void filter() throws ContradictionException {
    long least = past;
    long most = past;
    for (int i = 0; i < begins; i++) {
      least += least(i, 0);
      most += most(i, 0);
    }
    long in = inPast;
    for (int i = begins; i < vars.length; i++) {
      in += least(i, 0);
    }
    if (least >= little) {
      for (int i = begins; i < vars.length; i++) {
        long others = in - least(i, 0);
        long before = most;
        keep(i, c -> !broken(before, others + units(c, 0)));
      }
      for (int i = 0; i < begins; i++) {
        long others = most - most(i, 0);
        long all = in;
        keep(i, c -> !broken(others + units(c, 0), all));
      }
    } else if (broken(most, in)) {
      for (int i = 0; i < begins; i++) {
        long others = least - least(i, 0);
        keep(i, c -> others + units(c, 0) < little);
      }
    }
  }

  @Override
  boolean kept() {
    long before = past;
    long in = inPast;
    for (int i = 0; i < vars.length; i++) {
      before += i < begins ? units(only(i), 0) : 0;
      in += i < begins ? 0 : units(only(i), 0);
    }
    return before < little || !broken(before, in);
  }
}
