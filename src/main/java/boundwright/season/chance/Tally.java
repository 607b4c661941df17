package boundwright.season.chance;

import boundwright.readiness.DrillFamily;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.chance.Chances.Approach;
import boundwright.season.chance.Chances.Band;
import boundwright.season.chance.Chances.Buys;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntUnaryOperator;
import java.util.function.ToDoubleFunction;

/** Counts what came of simulated seasons. */
final class Tally {
  private static final DrillFamily[] FAMILIES = DrillFamily.values();

  private final SeasonInput input;
  private final Scenario scenario;
  private final List<SeasonDrawn> seasons;

  Tally(Scenario scenario, List<SeasonDrawn> seasons) {
    this.input = scenario.input;
    this.scenario = scenario;
    this.seasons = seasons;
  }

  double mean(ToDoubleFunction<SeasonDrawn> of) {
    return seasons.stream().mapToDouble(of).average().orElse(0);
  }

  List<Chances.Athlete> athletes(Attendance attendance) {
    List<Chances.Athlete> out = new ArrayList<>();
    for (int a = 0; a < input.squad().size(); a++) {
      int at = a;
      Member m = input.squad().get(a);
      out.add(
          new Chances.Athlete(
              m.id(), m.name(), attendance.of(m), mean(s -> s.sessions[at]), mean(s -> s.missed[at]), mean(s -> s.mended[at]), athleteBands(a), approaches(a)));
    }
    return out;
  }

  private List<Band> athleteBands(int athlete) {
    PlannedYear year = scenario.years.get(athlete);
    return bands((s, w) -> s.load[athlete][w], w -> planned(year, w));
  }

  List<Band> squadBands() {
    return bands(
        (s, w) -> {
          long sum = 0;
          for (int[] athlete : s.load) {
            sum += athlete[w];
          }
          return sum;
        },
        w -> scenario.years.stream().mapToInt(y -> planned(y, w)).sum());
  }

  private interface OfWeek {
    long load(SeasonDrawn s, int week);
  }

  private List<Band> bands(OfWeek of, IntUnaryOperator planned) {
    List<Band> out = new ArrayList<>();
    long[] all = new long[seasons.size()];
    for (int w = 0; w < (input.days() + 6) / 7 && all.length > 0; w++) {
      for (int i = 0; i < all.length; i++) {
        all[i] = of.load(seasons.get(i), w);
      }
      Arrays.sort(all);
      out.add(
          new Band(input.day(7 * w), quantile(all, 0.1), quantile(all, 0.5), quantile(all, 0.9), planned.applyAsInt(w) / 100.0));
    }
    return out;
  }

  /** Between neighbours, as of the sorted values 0 the first and 1 the last. */
  private static double quantile(long[] sorted, double p) {
    double at = p * (sorted.length - 1);
    int low = (int) at;
    int high = Math.min(low + 1, sorted.length - 1);
    return (sorted[low] + (at - low) * (sorted[high] - sorted[low])) / 100;
  }

  private static int planned(PlannedYear year, int week) {
    int sum = 0;
    for (int t = 7 * week; t < Math.min(year.days, 7 * week + 7); t++) {
      sum += t < year.open ? year.doneRight[t] + year.doneLeft[t] : year.planned(0, t);
    }
    return sum;
  }

  private List<Approach> approaches(int athlete) {
    PlannedYear year = scenario.years.get(athlete);
    List<Approach> out = new ArrayList<>();
    for (int k = 0; k < Math.max(1, year.mainMeets.length); k++) {
      LocalDate date = by(year, k);
      for (int f = 0; f < FAMILIES.length; f++) {
        Map<Integer, Integer> counted = new TreeMap<>();
        for (SeasonDrawn s : seasons) {
          counted.merge(s.steps[athlete][k * FAMILIES.length + f], 1, Integer::sum);
        }
        Map<Integer, Double> by = new TreeMap<>();
        counted.forEach((steps, n) -> by.put(steps, n / (double) seasons.size()));
        out.add(new Approach(meet(date, year), date, FAMILIES[f], plannedSteps(athlete, f, date), by));
      }
    }
    return out;
  }

  /** The day of a main meet; the season's last where there is none. */
  private LocalDate by(PlannedYear year, int meet) {
    return year.mainMeets.length == 0 ? input.last() : input.day(year.mainMeets[meet]);
  }

  private String meet(LocalDate date, PlannedYear year) {
    return input.meet(year.member, date).map(Meet::name).orElse("the end of the season");
  }

  private int plannedSteps(int athlete, int family, LocalDate date) {
    SeasonPlan.Year y = scenario.plan.of(input.squad().get(athlete).id()).orElseThrow();
    return y.climbs().stream().filter(c -> c.family() == FAMILIES[family]).findFirst().orElseThrow().stepsOn(date);
  }

  /** What these seasons have more than the same ones of another plan. */
  Chances.Answer less(Tally without, WhatIf what) {
    List<Buys> squad = new ArrayList<>();
    squad.add(buys(without, "planned approaches by the last main meet", "share", (t, s) -> t.reached(s)));
    squad.add(buys(without, "approach by then, mean of the families", "steps", (t, s) -> t.steps(s)));
    squad.add(buys(without, "sessions of an athlete", "a season", (t, s) -> Arrays.stream(s.sessions).average().orElse(0)));
    squad.add(buys(without, "load of an athlete", "standing-bound contacts a week", (t, s) -> t.load(s)));
    squad.add(buys(without, "days changed of an athlete", "a season", (t, s) -> Arrays.stream(s.mended).average().orElse(0)));
    List<Buys> athletes = new ArrayList<>();
    for (int a = 0; a < input.squad().size(); a++) {
      int at = a;
      athletes.add(buys(without, input.squad().get(a).name(), "share", (t, s) -> t.reached(s, at)));
    }
    return new Chances.Answer(what, squad, athletes);
  }

  private interface Of {
    double value(Tally tally, SeasonDrawn s);
  }

  private Buys buys(Tally without, String what, String unit, Of of) {
    int n = seasons.size();
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double d = of.value(this, seasons.get(i)) - of.value(without, without.seasons.get(i));
      sum += d;
      squares += d * d;
    }
    double mean = n == 0 ? 0 : sum / n;
    double variance = n < 2 ? 0 : Math.max(0, (squares - n * mean * mean) / (n - 1));
    return new Buys(what, unit, mean, n < 2 ? 0 : Math.sqrt(variance / n));
  }

  private double reached(SeasonDrawn s) {
    double sum = 0;
    for (int a = 0; a < s.steps.length; a++) {
      sum += reached(s, a);
    }
    return sum / s.steps.length;
  }

  private double reached(SeasonDrawn s, int athlete) {
    PlannedYear year = scenario.years.get(athlete);
    int at = s.steps[athlete].length - FAMILIES.length;
    LocalDate date = by(year, year.mainMeets.length - 1);
    int n = 0;
    for (int f = 0; f < FAMILIES.length; f++) {
      n += s.steps[athlete][at + f] >= plannedSteps(athlete, f, date) ? 1 : 0;
    }
    return n / (double) FAMILIES.length;
  }

  private double steps(SeasonDrawn s) {
    double sum = 0;
    for (int[] steps : s.steps) {
      for (int f = 0; f < FAMILIES.length; f++) {
        sum += steps[steps.length - FAMILIES.length + f];
      }
    }
    return sum / (s.steps.length * FAMILIES.length);
  }

  private double load(SeasonDrawn s) {
    double sum = 0;
    for (int[] athlete : s.load) {
      for (int w : athlete) {
        sum += w / 100.0 / athlete.length;
      }
    }
    return sum / s.load.length;
  }
}
