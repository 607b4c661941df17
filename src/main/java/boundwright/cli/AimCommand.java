package boundwright.cli;

import boundwright.approach.aim.AimAdvice;
import boundwright.approach.aim.AimAnswer;
import boundwright.approach.aim.AimPlan;
import boundwright.approach.aim.AimPolicy;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.approach.board.GapEntry;
import boundwright.athlete.Athlete;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where to aim at the board, from a form that is given or from what is kept of an athlete. */
@Command(
    name = "aim",
    description = {
      "Where to aim behind the take-off line: for the longest best of so many attempts, or for a distance; of an",
      "athlete also how far to move the start mark, with the foul chance before and after.",
      "Examples: boundwright aim --effective-mean 14.00 --effective-sd 0.20 --gap-sd 0.10 --attempts 6 --policy",
      "          boundwright aim --athlete NAME --target 12.40",
      "          boundwright aim --athlete NAME --keep --gap 0.12 --distance 11.83%n"
    })
final class AimCommand implements Callable<Integer> {
  private static final int MEET_ATTEMPTS = 6;

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "Whose kept attempts at the board, in training and in meets; any case.")
  private @Nullable String athlete;

  @Option(names = "--event", paramLabel = "EVENT", description = "triple-jump or long-jump. Default: triple-jump.")
  private @Nullable String event;

  @Option(
      names = "--combined",
      paramLabel = "WHICH",
      description = "Aim for the most points of the decathlon or heptathlon, where no mark is worth nothing; the event is then the long jump.")
  private @Nullable String combined;

  @Option(names = "--effective-mean", paramLabel = "LENGTH", description = "Mean effective distance, toe to mark in the sand.")
  private @Nullable String effectiveMean;

  @Option(names = "--effective-sd", paramLabel = "LENGTH", description = "Its standard deviation from attempt to attempt.")
  private @Nullable String effectiveSd;

  @Option(names = "--gap-sd", paramLabel = "LENGTH", description = "Standard deviation of the board gap.")
  private @Nullable String gapSd;

  @Option(names = "--gap-mean", paramLabel = "LENGTH", description = "Where the foot falls now on average, + behind the line: for the move of the start.")
  private @Nullable String gapMean;

  @Option(names = "--attempts", paramLabel = "N", description = "Attempts, 1 to 6. Default: 6.")
  private int attempts = MEET_ATTEMPTS;

  @Option(
      names = "--no-mark",
      paramLabel = "LENGTH",
      description = {
        "What ending without a mark counts as; 0 counts it as nothing. Default: 1 m below the mean (a setting).",
        "With --target it does not matter."
      })
  private @Nullable String noMark;

  @Option(names = "--target", paramLabel = "LENGTH", description = "Aim for this distance instead of the longest best.")
  private @Nullable String target;

  @Option(names = "--policy", description = "Also where to aim at each attempt, without a mark yet and given a best so far.")
  private boolean policy;

  @Option(names = "--best", paramLabel = "LENGTH", description = "A best so far to show the policy for; can be repeated. Default: around the mean.")
  private List<String> bests = new ArrayList<>();

  @Option(names = "--keep", description = "Keep an attempt at the board in training: --gap or --foul.")
  private boolean keep;

  @Option(names = "--gap", paramLabel = "LENGTH", description = "Its board gap, + behind the line; negative is a foul that was measured.")
  private @Nullable String gap;

  @Option(names = "--foul", description = "A foul of unknown size.")
  private boolean foul;

  @Option(names = "--distance", paramLabel = "LENGTH", description = "Its distance from the take-off line.")
  private @Nullable String distance;

  @Option(names = "--shift", paramLabel = "LENGTH", description = "How far the start mark stood from the planned one, + back. Default: 0.")
  private @Nullable String shift;

  @Option(names = "--date", paramLabel = "DAY", description = "Day of the attempt, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Option(names = "--note", paramLabel = "WORDS", description = "Your words, kept with the attempt.")
  private String note = "";

  @Option(names = "--undo-last", description = "Take back the attempt in training of this athlete that was kept last.")
  private boolean undoLast;

  @Mixin private UnitOption unit = new UnitOption();

  AimCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (athlete == null) {
      if (keep || undoLast) {
        throw new RefusedException("Say whose attempt it is with --athlete NAME: attempts are kept with their athlete.");
      }
      given(s, unit.in(CoachSettings.DEFAULT));
      return 0;
    }
    if (effectiveMean != null || effectiveSd != null || gapSd != null || gapMean != null) {
      throw new RefusedException("Give a form (--effective-mean, --effective-sd, --gap-sd) or an athlete, not both: the athlete's form is learned from the log.");
    }
    try (Workbench bench = data.open(s)) {
      LengthUnit in = unit.in(bench);
      Athlete who = DataOptions.athlete(bench, athlete);
      if (undoLast) {
        entry(s, who, undo(bench, who), in);
      } else if (keep) {
        entry(s, who, bench.boardLog().add(entry(s, who, in)), in);
      } else if (gap != null || foul || distance != null || shift != null) {
        throw new RefusedException("--gap, --foul, --distance and --shift belong to an attempt: add --keep to keep it.");
      } else {
        kept(s, who, bench.aimDesk().answer(who, event(), goal(in, null), attempts), in);
      }
      return 0;
    }
  }

  private Event event() {
    return event == null && combined != null ? Event.LONG_JUMP : Choices.event(event);
  }

  /** What is asked for; null for the longest best with no mark counted as the settings say. */
  private @Nullable Goal goal(LengthUnit in, @Nullable JumpForm form) {
    if (combined != null) {
      if (target != null || noMark != null) {
        throw new RefusedException("Give --combined, --target or --no-mark, one of them: each says what the attempts are for.");
      }
      return new Goal.Points(Choices.choice("combined event", combined, List.of(CombinedTable.values()), CombinedTable::label));
    }
    if (target != null) {
      // with a target no mark is a miss like any other, whatever it counts as
      return Goal.Target.metres(event(), in.read("target", target));
    }
    if (noMark != null) {
      return new Goal.Longest(in.read("value of no mark", noMark));
    }
    return form == null ? null : Goal.Longest.usual(form);
  }

  private void given(Surroundings s, LengthUnit in) {
    if (effectiveMean == null || effectiveSd == null || gapSd == null) {
      throw new RefusedException("Give the form (--effective-mean, --effective-sd and --gap-sd), or an athlete whose attempts are kept (--athlete NAME).");
    }
    JumpForm form =
        new JumpForm(
            event(), in.read("mean effective distance", effectiveMean), in.read("spread of the effective distance", effectiveSd), in.read("spread of the board gap", gapSd));
    Goal goal = goal(in, form);
    AimPlan plan = AimPlan.of(form, goal == null ? Goal.Longest.usual(form) : goal, attempts);
    Double now = Choices.length(in, "mean gap", gapMean);
    AimAdvice advice = now == null ? null : AimAdvice.given(form, plan.goal(), attempts, now);
    if (top.json()) {
      json(s, null, plan, advice == null ? null : AimJson.Start.of(advice), null, in);
    } else {
      List<Double> shown = checked(plan, bests(plan, in));
      MarksText text = new MarksText(s.out(), in);
      if (advice != null) {
        text.wrapped("START", advice.words(in));
      }
      plan(s, text, plan, shown, in);
    }
  }

  private void kept(Surroundings s, Athlete who, AimAnswer answer, LengthUnit in) {
    AimPlan plan = answer.plan();
    AimAdvice advice = answer.advice();
    MarksText text = new MarksText(s.out(), in);
    if (plan == null || advice == null) {
      if (top.json()) {
        Json.print(
            s.out(),
            new AimJson.CannotTell(who.name(), combined != null ? "points" : target == null ? "longest" : "target", null, null, answer.words(in), AimJson.Log.of(answer)));
      } else {
        text.wrapped("START", answer.words(in));
        text.wrapped("From", answer.from());
      }
      return;
    }
    if (top.json()) {
      json(s, who, plan, AimJson.Start.of(advice), AimJson.Log.of(answer), in);
      return;
    }
    List<Double> shown = checked(plan, bests(plan, in));
    text.wrapped("START", advice.words(in));
    plan(s, text, plan, shown, in);
    s.out().println();
    text.wrapped("From", answer.from());
    text.wrapped(
        "How sure",
        "The foot falls on average " + in.write(answer.board().mean_m().p50()) + " behind the line (" + in.write(answer.board().mean_m().p05()) + " to "
            + in.write(answer.board().mean_m().p95()) + "); depending on the spread the best aim lies between " + in.write(advice.nearest_m()) + " and "
            + in.write(advice.furthest_m()) + ".");
  }

  private void json(
      Surroundings s, @Nullable Athlete who, AimPlan plan, AimJson.@Nullable Start start, AimJson.@Nullable Log log, LengthUnit in) {
    String name = who == null ? null : who.name();
    List<Double> shown = bests(plan, in);
    if (plan.goal() instanceof Goal.Longest longest) {
      Json.print(s.out(), AimJson.Longest.of(name, plan, longest, shown, start, log));
    } else if (plan.goal() instanceof Goal.Target wanted) {
      Json.print(s.out(), AimJson.Target.of(name, plan, wanted, shown, start, log));
    } else if (plan.goal() instanceof Goal.Points points) {
      Json.print(s.out(), AimJson.PointsOf.of(name, plan, points, shown, start, log));
    } else {
      throw new IllegalStateException("The command asks for no other goal");
    }
  }

  /** The bests so far to show the policy for; null without it. */
  private @Nullable List<Double> bests(AimPlan plan, LengthUnit in) {
    if (!policy && bests.isEmpty()) {
      return null;
    }
    return bests.isEmpty() ? plan.usualBests_m() : bests.stream().map(b -> in.read("best so far", b)).toList();
  }

  /** Refuses a best that nobody jumps before anything is printed. */
  private static @Nullable List<Double> checked(AimPlan plan, @Nullable List<Double> shown) {
    if (shown != null) {
      shown.forEach(best -> plan.at(1, best));
    }
    return shown;
  }

  private static void plan(Surroundings s, MarksText text, AimPlan plan, @Nullable List<Double> shown, LengthUnit in) {
    boolean longest = plan.goal() instanceof Goal.Longest;
    boolean points = plan.goal() instanceof Goal.Points;
    AimPolicy.Advice first = plan.first();
    if (longest) {
      text.line("AIM", in.write(first.aim_m()) + " behind the line at the first attempt, foul chance " + percent(first.foulChance()));
      text.line("Best of " + plan.attempts(), in.write(first.worth()) + " expected");
      text.wrapped(
          "One aim",
          "Kept for all attempts: " + in.write(plan.fixed().aim_m()) + ", foul chance " + percent(plan.fixed().foulChance()) + ", expected best "
              + in.write(plan.fixed().worth()) + String.format(Locale.ROOT, "; changing it wins %.1f mm.", 1000 * plan.policyGain()));
    } else if (points) {
      text.line("AIM", in.write(first.aim_m()) + " behind the line at the first attempt, foul chance " + percent(first.foulChance()));
      text.line("Best of " + plan.attempts(), String.format(Locale.ROOT, "%.0f points expected", first.worth()));
      text.wrapped(
          "One aim",
          "Kept for all attempts: " + in.write(plan.fixed().aim_m()) + ", foul chance " + percent(plan.fixed().foulChance())
              + String.format(Locale.ROOT, ", %.0f points expected.", plan.fixed().worth()));
    } else {
      text.line("AIM", in.write(plan.fixed().aim_m()) + " behind the line at every attempt, foul chance " + percent(plan.fixed().foulChance()));
      text.line(
          "Chance",
          MarksText.chance(plan.fixed().worth()) + " in " + plan.attempts() + (plan.attempts() == 1 ? " attempt" : " attempts") + ", "
              + MarksText.chance(plan.perAttempt()) + " at each");
    }
    if (shown != null) {
      s.out().println();
      s.out().println("Where to aim, attempt by attempt (foul chance):");
      row(s, "attempt", "no mark yet", shown.stream().map(b -> "best " + in.write(b)).toList());
      for (int k = 1; k <= plan.attempts(); k++) {
        int attempt = k;
        row(s, String.valueOf(k), advice(plan.at(k, null), in), shown.stream().map(b -> advice(plan.at(attempt, b), in)).toList());
      }
    }
  }

  private static void row(Surroundings s, String attempt, String noMark, List<String> given) {
    StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "  %-8s %22s", attempt, noMark));
    given.forEach(g -> line.append(String.format(Locale.ROOT, " %22s", g)));
    s.out().println(line);
  }

  private static String advice(AimPolicy.Advice a, LengthUnit in) {
    return a.worthwhile() ? in.write(a.aim_m()) + " (" + percent(a.foulChance()) + ")" : "nothing to win";
  }

  private static String percent(double chance) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * chance);
  }

  private GapEntry entry(Surroundings s, Athlete who, LengthUnit in) {
    if ((gap == null) != foul) {
      throw new RefusedException("An attempt at the board has its gap (--gap LENGTH) or is a foul of unknown size (--foul), one of the two.");
    }
    Double moved = Choices.length(in, "shift of the start mark", shift);
    return new GapEntry(
        0, who.id(), Choices.day(date, s), event(), Choices.length(in, "board gap", gap), moved == null ? 0 : moved, Choices.length(in, "distance", distance), note);
  }

  private static GapEntry undo(Workbench bench, Athlete who) {
    GapEntry last =
        bench.boardLog().gaps(who.id()).stream()
            .max(Comparator.comparingLong(GapEntry::id))
            .orElseThrow(
                () -> new RefusedException(who.name() + " has no attempt in training to take back. Those of meets are taken back with: boundwright meet undo."));
    return bench.boardLog().removeGap(who.id(), last.id()).orElse(last);
  }

  private void entry(Surroundings s, Athlete who, GapEntry e, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), AimJson.Entry.of(who.name(), e, undoLast));
      return;
    }
    Double at = e.gap_m();
    Double reached = e.distance_m();
    new MarksText(s.out(), in)
        .wrapped(
            undoLast ? "Taken back" : "Kept",
            who.name() + ", " + e.date() + ", " + e.event().label() + ": " + (at == null ? "foul of unknown size" : (e.foul() ? "foul, gap " : "gap ") + in.write(at))
                + (reached == null ? "" : ", distance " + in.write(reached)) + (e.startShift_m() == 0 ? "" : ", start moved " + in.write(e.startShift_m()))
                + ".");
  }
}
