package boundwright.season.chance;

import boundwright.load.account.ContactWeights;
import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.Unplanned;
import boundwright.season.check.GuardCheck;
import boundwright.season.mend.Difference;
import boundwright.season.mend.Happened;
import boundwright.season.mend.Mender;
import boundwright.season.solve.SeasonWork;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * The quick step of the simulated seasons beside the full mend after the same disturbance of the same plan, and nothing after it:
 * {@code bench/season-simulate mend ATHLETES WEEKS SECONDS CASES SEED}. Half of the cases are a missed session, half days away.
 */
public final class QuickStepBench {
  private QuickStepBench() {}

  private static final class Side {
    private final List<Integer> changed = new ArrayList<>();
    private final List<Double> off = new ArrayList<>();
    private final List<Double> ms = new ArrayList<>();
    private int refused;

    private static double at(List<? extends Number> all, double p) {
      List<Double> sorted = new ArrayList<>(all.stream().map(Number::doubleValue).toList());
      Collections.sort(sorted);
      return sorted.get((int) Math.min(sorted.size() - 1, Math.floor(p * sorted.size())));
    }

    void print(String name) {
      System.out.printf(
          Locale.ROOT, "  %-10s changed days median %.0f, nine in ten %.0f; load given up mean %.1f, median %.1f standing-bound contacts; refused days %d; ms median %.2f, most %.1f%n", name,
          at(changed, 0.5), at(changed, 0.9), off.stream().mapToDouble(d -> d).average().orElse(0), at(off, 0.5), refused, at(ms, 0.5), at(ms, 1));
    }
  }

  /** Athletes, weeks, seconds of planning, cases, seed. */
  public static void main(String[] args) {
    int[] a = Arrays.stream(args).skip(1).mapToInt(Integer::parseInt).toArray();
    SeasonInput made = MadeUpSeason.of(a[0], a[1], a[4]);
    SeasonInput input =
        new SeasonInput(made.name(), made.first(), made.last(), made.periods(), made.meets(), made.venues(), made.squad(), made.rules().with(Unplanned.NOTHING));
    SeasonPlan plan = SeasonWork.ofFile().planner(input, null, input.first(), a[4]).plan(Duration.ofSeconds(a[2]), t -> {}).plan();
    Random random = new Random(a[4]);
    for (int days : new int[] {0, 9}) {
      Side quick = new Side();
      Side full = new Side();
      for (int i = 0; i < a[3] / 2; i++) {
        SeasonPlan.Year y = plan.years().get(random.nextInt(a[0]));
        PlannedDay missed = y.days().get(random.nextInt(y.days().size()));
        LocalDate today = missed.date().plusDays(1);
        Done done = Done.asPlanned(plan, today).without(y.athleteId(), missed.date());
        SeasonInput now = days == 0 || !today.plusDays(days).isBefore(input.last()) ? input : Happened.away(input, y.athleteId(), new Away(new Span(today, today.plusDays(days - 1L)), Away.Why.AWAY));
        one(now, plan, done, y.athleteId(), quick, full);
      }
      System.out.println(days == 0 ? "A missed session:" : "A missed session and " + days + " days away after it:");
      quick.print("quick step");
      full.print("full mend");
    }
  }

  private static void one(SeasonInput input, SeasonPlan plan, Done done, long athlete, Side quick, Side full) {
    long[] most = new long[1];
    Mender mender = new Mender(input, Happened.climbs(plan, input), plan, done, () -> System.nanoTime() > most[0]);
    long start = System.nanoTime();
    most[0] = start + 1_200_000_000L;
    Mender.Mended m = mender.mend();
    full.ms.add((System.nanoTime() - start) / 1e6);
    full.refused += m.refused().size();
    count(input, plan, m.plan(), done, athlete, full);
    SeasonSimulator s =
        new SeasonSimulator(
            input, plan, done, SeasonWork.ofFile().habits(done.today()), Attendance.of(input.squad(), 1), Learning.asPlanned(), List.of(), 1);
    s.written(0);
    start = System.nanoTime();
    SeasonPlan written = s.written(0);
    quick.ms.add((System.nanoTime() - start) / 1e6);
    quick.refused += new GuardCheck(input).refused(written, done).size();
    count(input, plan, written, done, athlete, quick);
  }

  private static void count(SeasonInput input, SeasonPlan before, SeasonPlan after, Done done, long athlete, Side to) {
    List<Difference> all = Difference.between(before, after, done.today());
    ContactWeights weights = new ContactWeights(input.rules().guard().scale());
    double off = 0;
    int changed = 0;
    for (Difference d : all) {
      boolean away = input.squad().stream().filter(m -> m.id() == athlete).anyMatch(m -> m.away(d.date()).filter(w -> w == Away.Why.AWAY).isPresent());
      if (d.athleteId() == athlete && !away) {
        changed++;
        off += d.before() == null ? 0 : weights.of(d.before().on(d.date())).units();
        off -= d.after() == null ? 0 : weights.of(d.after().on(d.date())).units();
      } else if (d.athleteId() != athlete) {
        changed++;
      }
    }
    to.changed.add(changed);
    to.off.add(off);
  }
}
