package boundwright.season.proof;

import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.mend.Mender;
import boundwright.season.mend.MissedSession;
import boundwright.season.solve.Joint;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.year.Choice;
import boundwright.season.year.DailyModel;
import boundwright.season.year.DailyModel.Solved;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.BiPredicate;

/**
 * Missed sessions: the days that the mend changes beside the fewest that CP-SAT finds and proves, the others' days as they were published.
 * Run: {@code bench/season-proof mend ATHLETES WEEKS SECONDS MISSED SEED SECONDS-A-CASE}, as {@code bench/season-proof mend 12 30 8 50 1 60}.
 * One thread. Own output.
 */
public final class MendProof {
  private MendProof() {}

  /** Athletes, weeks, seconds of planning, missed sessions, seed, seconds a case. */
  public static void main(String[] args) {
    int athletes = Integer.parseInt(args[0]);
    int cases = Integer.parseInt(args[3]);
    long seed = Long.parseLong(args[4]);
    double seconds = Double.parseDouble(args[5]);
    SeasonInput input = MadeUpSeason.of(athletes, Integer.parseInt(args[1]), seed);
    List<List<Climb>> climbs = MadeUpSeason.climbs(input, 8);
    SeasonPlan plan = new SeasonPlanner(input, climbs, null, seed).plan(Duration.ofSeconds(Integer.parseInt(args[2])), t -> {}).plan();
    Random random = new Random(seed);
    int within3 = 0;
    int provenOver3 = 0;
    int best = 0;
    int beaten = 0;
    int undecided = 0;
    for (int i = 0; i < cases; i++) {
      MissedSession missed = MissedSession.of(plan, random);
      Done done = missed.done();
      long[] most = {System.nanoTime() + 1_200_000_000L};
      Mender.Mended mended = new Mender(input, climbs, plan, done, () -> System.nanoTime() > most[0]).mend();
      int ours = mended.differences().size();
      within3 += ours <= 3 ? 1 : 0;
      if (ours <= 1) {
        // a day at least has to change where something is refused
        best++;
        continue;
      }
      List<YearProblem> problems = new SeasonPlanner(input, climbs, null, plan, done, 1).problems();
      int a = plan.years().indexOf(missed.year());
      YearProblem begin = new SeasonPlanner(input, climbs, null, mended.plan(), done, 1).problems().get(a);
      Joint joint = published(input, problems, a);
      int today = input.number(done.today());
      BiPredicate<Integer, Choice> fits = (t, c) -> joint.fits(a, t, c.venue());
      Solved s = DailyModel.refusals(problems.get(a)).fewestChanges(today, fits, begin::published, seconds);
      provenOver3 += s.bound() > 3 ? 1 : 0;
      best += ours == s.bound() ? 1 : 0;
      beaten += s.best() >= 0 && s.best() < ours ? 1 : 0;
      undecided += ours != s.bound() && !(s.best() >= 0 && s.best() < ours) ? 1 : 0;
      System.out.printf(Locale.ROOT, "  %s %s: ours %d, CP-SAT's best %d, at least %d%n", missed.year().athlete(), missed.day().date(), ours, s.best(), s.bound());
    }
    System.out.printf(
        Locale.ROOT, "%d missed: within three days %d, more are proven to be needed in %d; fewest proven %d, CP-SAT found fewer %d, undecided %d%n", cases,
        within3, provenOver3, best, beaten, undecided);
  }

  /** What was published of all but one athlete. */
  private static Joint published(SeasonInput input, List<YearProblem> problems, int but) {
    Joint joint = new Joint(problems, input.venues());
    for (int b = 0; b < problems.size(); b++) {
      if (b != but) {
        joint.replace(b, YearLine.published(problems.get(b)));
      }
    }
    return joint;
  }
}
