package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.footfall.Routine;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.Verdict;
import boundwright.readiness.Evidence.Name;
import boundwright.readiness.GateAnswer.Decision;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The gate to the next rung: may this athlete add speed? It asks for all of {@link Evidence.Name}; one that is not met
 * is enough to stay. Every measure is built so that making it worse (a clean rep turned faulty, a late landing shorter,
 * more pain) can never turn <em>stay</em> into <em>add</em>: the sequential test's sum is taken over the whole window
 * of days rather than restarted, and fading is judged by its estimate.
 */
public final class Gate {
  /** Where the progression comes from. */
  public static final Source LADDER =
      new Source("ladder", "Add two steps only when the present speed is mastered", "common practice", Standing.COMMON_PRACTICE);

  /** Where the gate's numbers come from. */
  public static final Source RULES =
      new Source("gate", "How many reps and days, and which clean share, the gate asks for", "first guess of the makers, simulated",
          Standing.JUDGEMENT);

  private static final Source OWN = new Source("own-flights", "Lengths of this athlete's flights", "the reps you logged", Standing.OWN_DATA);
  private static final int LOOK_AHEAD = 60;

  private final GateRules rules;
  private final SequentialTest test;

  /** A gate that asks for {@code rules} and runs {@code test} beside them. */
  public Gate(GateRules rules, SequentialTest test) {
    this.rules = rules;
    this.test = test;
  }

  /**
   * Answers for one athlete and family.
   *
   * @param family of drills
   * @param rung approach steps they work from
   * @param reps judged reps of this family from this rung, in the order done; older than the window are ignored
   * @param speed gain over the rung below, or null from standing
   * @param guard the guard's verdict for today
   * @param today the day of asking
   */
  public GateAnswer answer(
      DrillFamily family, int rung, List<GateRep> reps, @Nullable SpeedUse speed, Verdict guard, LocalDate today) {
    List<GateRep> window =
        reps.stream().filter(r -> !r.date().isAfter(today) && r.date().isAfter(today.minusDays(rules.days()))).toList();
    List<Evidence> evidence = new ArrayList<>(clean(window));
    evidence.add(speedUsed(speed));
    evidence.add(noFading(window));
    evidence.add(guardClear(guard));
    evidence.add(noPain(guard));
    boolean all = evidence.stream().allMatch(Evidence::met);
    int top = Routine.RUNGS.get(Routine.RUNGS.size() - 1);
    if (all && rung < top) {
      return new GateAnswer(family, rung, Decision.ADD_TWO_STEPS, "All that is asked is there: go to " + (rung + 2) + " steps.", 0, 0, evidence);
    }
    if (rung > 0 && goBack(window, speed)) {
      return new GateAnswer(family, rung, Decision.GO_BACK, whyBack(window, speed, rung), 0, 0, evidence);
    }
    if (all) {
      return new GateAnswer(
          family, rung, Decision.STAY, top + " steps is the top of this ladder; longer belongs to the full run-up.", 0, 0, evidence);
    }
    return stay(family, rung, window, evidence);
  }

  private List<Evidence> clean(List<GateRep> window) {
    int good = (int) window.stream().filter(GateRep::clean).count();
    BetaShare share = BetaShare.seen(good, window.size());
    double chance = share.chanceAbove(rules.shareAbove());
    double sum = sum(window);
    int days = passDays(window);
    return List.of(
        new Evidence(Name.JUDGED_REPS, window.size() + " in " + rules.days() + " days", "at least " + rules.reps(),
            window.size() >= rules.reps(), RULES),
        new Evidence(Name.CLEAN_SHARE,
            good + " of " + window.size() + " clean; " + percent(chance) + " sure that the true share is above " + percent(rules.shareAbove()),
            "at least " + percent(rules.shareChance()) + " sure", chance >= rules.shareChance(), BetaShare.SOURCE),
        new Evidence(Name.SEQUENTIAL_TEST, text(sum) + " so far", "passes at " + text(test.passAt()) + " (each clean rep "
            + text(test.forGood()) + ", each faulty " + text(test.forBad()) + ")", sum >= test.passAt(), SequentialTest.SOURCE),
        new Evidence(Name.TWO_DAYS, days + (days == 1 ? " day" : " days") + " with " + rules.passDayReps() + " reps or more, "
            + percent(rules.passDayShare()) + " of them clean", "at least " + rules.passDays() + " days", days >= rules.passDays(), RULES));
  }

  private double sum(List<GateRep> window) {
    long good = window.stream().filter(GateRep::clean).count();
    return good * test.forGood() + (window.size() - good) * test.forBad();
  }

  private int passDays(List<GateRep> window) {
    return (int) byDay(window).values().stream()
        .filter(d -> d.size() >= rules.passDayReps())
        .filter(d -> d.stream().filter(GateRep::clean).count() >= rules.passDayShare() * d.size())
        .count();
  }

  private static Map<LocalDate, List<GateRep>> byDay(List<GateRep> window) {
    Map<LocalDate, List<GateRep>> days = new LinkedHashMap<>();
    window.forEach(r -> days.computeIfAbsent(r.date(), d -> new ArrayList<>()).add(r));
    return days;
  }

  private Evidence speedUsed(@Nullable SpeedUse speed) {
    if (speed == null) {
      return new Evidence(Name.SPEED_USED, "from standing there is no rung below", "nothing", true, LADDER);
    }
    String needed = "at least " + percent(rules.longerChance()) + " sure that flights are longer than at the rung below";
    if (speed.repsHere() == 0) {
      return new Evidence(Name.SPEED_USED, "no length or tap from this rung yet", needed, false, OWN);
    }
    return new Evidence(Name.SPEED_USED,
        percent(speed.chanceLonger()) + " sure; " + String.format(Locale.ROOT, "%+.0f cm", 100 * speed.perFlight()) + " a flight",
        needed, speed.chanceLonger() >= rules.longerChance(), OWN);
  }

  /** Over ten reps of a day the landing must not shrink; where lengths are few, the later reps must stay clean. */
  private Evidence noFading(List<GateRep> window) {
    Fade fade = Fade.of(byDay(window).values());
    if (fade.known()) {
      return new Evidence(Name.NO_FADING, String.format(Locale.ROOT, "%+.1f %% over ten reps", 100 * fade.overTenReps()),
          "no more than " + percent(rules.fade()) + " shorter", fade.overTenReps() >= -rules.fade(), OWN);
    }
    int late = 0;
    int clean = 0;
    for (List<GateRep> day : byDay(window).values()) {
      for (GateRep r : day.subList(day.size() / 2, day.size())) {
        late++;
        clean += r.clean() ? 1 : 0;
      }
    }
    double share = late == 0 ? 0 : clean / (double) late;
    return new Evidence(Name.NO_FADING, late == 0 ? "no judged rep yet" : percent(share) + " of the later reps of each day clean",
        "at least " + percent(rules.lateShare()) + " (lengths are too few to tell)", late > 0 && share >= rules.lateShare(), RULES);
  }

  private static Evidence guardClear(Verdict guard) {
    String value =
        guard.concerns().isEmpty() ? guard.answer().label() : guard.answer().label() + ": " + guard.concerns().get(0).rule().label();
    Source source = guard.concerns().isEmpty() ? LADDER : guard.concerns().get(0).source();
    return new Evidence(Name.GUARD_CLEAR, value, "not refused", guard.answer() != Answer.REFUSED, source);
  }

  private static Evidence noPain(Verdict guard) {
    for (Finding f : guard.findings()) {
      if (f.rule() == Finding.Rule.PAIN || f.rule() == Finding.Rule.REFER) {
        return new Evidence(Name.NO_PAIN, Math.round(f.value()) + " of 10, " + f.answer().label(),
            "allowed by the pain limits in the last seven days", f.answer() == Answer.ALLOWED, f.source());
      }
    }
    return new Evidence(Name.NO_PAIN, "none entered in seven days", "allowed by the pain limits in the last seven days", true,
        boundwright.load.LoadSources.PAIN);
  }

  private boolean goBack(List<GateRep> window, @Nullable SpeedUse speed) {
    if (window.size() < rules.goBackReps()) {
      return false;
    }
    boolean failing = sum(window) <= test.failAt();
    boolean wasted = speed != null && speed.repsHere() >= rules.goBackReps() && speed.chanceLonger() <= 1 - rules.longerChance();
    return failing || wasted;
  }

  private String whyBack(List<GateRep> window, @Nullable SpeedUse speed, int rung) {
    String below = rung == 2 ? "standing" : String.valueOf(rung - 2);
    long good = window.stream().filter(GateRep::clean).count();
    if (sum(window) <= test.failAt()) {
      return "Only " + good + " of " + window.size() + " reps clean from " + rung + " steps: this speed is not mastered. Go back to "
          + below + ".";
    }
    return "The flights are not longer than from " + (rung == 2 ? below : below + " steps") + " (" + percent(speed == null ? 0 : speed.chanceLonger())
        + " sure that they are): the speed is not used. Go back to " + below + ".";
  }

  private GateAnswer stay(DrillFamily family, int rung, List<GateRep> window, List<Evidence> evidence) {
    List<Evidence> others =
        evidence.stream().filter(e -> !e.met()).filter(e -> e.name().compareTo(Name.TWO_DAYS) > 0 && e.name() != Name.NO_FADING).toList();
    int[] missing = missing(window);
    StringBuilder why = new StringBuilder();
    if (missing[0] > 0) {
      why.append("Missing: ").append(missing[0]).append(missing[0] == 1 ? " clean rep" : " clean reps").append(" on ").append(missing[1])
          .append(missing[1] == 1 ? " more day." : " more days.");
    } else if (missing[0] < 0) {
      why.append("Missing: more than ").append(LOOK_AHEAD).append(" clean reps; work on the faults first.");
    }
    for (Evidence e : evidence) {
      if (!e.met() && (others.contains(e) || (e.name() == Name.NO_FADING && missing[0] == 0))) {
        why.append(why.length() == 0 ? "" : " ").append("Not there: ").append(e.name().label()).append(" (").append(e.value()).append(").");
      }
    }
    return new GateAnswer(family, rung, Decision.STAY, why.toString(), Math.max(0, missing[0]), Math.max(0, missing[1]), evidence);
  }

  /** Fewest clean reps, six a day on days to come, after which the clean evidence would be met: {reps, days}; -1 if too many. */
  private int[] missing(List<GateRep> window) {
    List<GateRep> ahead = new ArrayList<>(window);
    LocalDate day = window.isEmpty() ? LocalDate.EPOCH : window.get(window.size() - 1).date();
    int reps = 0;
    int days = 0;
    while (!clean(ahead).stream().allMatch(Evidence::met)) {
      if (reps == LOOK_AHEAD) {
        return new int[] {-1, -1};
      }
      if (reps % 6 == 0) {
        day = day.plusDays(1);
        days++;
      }
      ahead.add(new GateRep(day, true, Double.NaN));
      reps++;
    }
    return new int[] {reps, days};
  }

  private static String percent(double share) {
    return Math.round(100 * share) + " %";
  }

  private static String text(double x) {
    return String.format(Locale.ROOT, "%+.2f", x);
  }
}
