package boundwright.cli;

import boundwright.approach.aim.AimAdvice;
import boundwright.approach.aim.AimAnswer;
import boundwright.approach.aim.AimPlan;
import boundwright.approach.aim.AimPolicy;
import boundwright.approach.aim.EffectiveForm;
import boundwright.approach.aim.FixedAim;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.approach.board.BoardSpread;
import boundwright.approach.board.GapEntry;
import boundwright.quantity.LengthUnit;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What {@code aim --json} prints; field by field in {@code docs/formats-json.md}. */
final class AimJson {
  private AimJson() {}

  /** The form that the answer rests on. */
  record Form(double effectiveMean_m, double effectiveSd_m, double gapSd_m) {
    static Form of(JumpForm f) {
      return new Form(Json.length(f.effectiveMean_m()), Json.length(f.effectiveSd_m()), Json.length(f.gapSd_m()));
    }
  }

  /** For the longest best. */
  record Longest(
      @Nullable String athlete,
      String goal,
      Form form,
      int attempts,
      double noMark_m,
      double firstAim_m,
      double expectedBest_m,
      double foulChance,
      double fixedAim_m,
      double fixedExpectedBest_m,
      double fixedFoulChance,
      double policyGain_m,
      @Nullable List<Row> policy,
      @Nullable Start start,
      @Nullable Log log) {
    static Longest of(@Nullable String athlete, AimPlan plan, Goal.Longest goal, @Nullable List<Double> bests, @Nullable Start start, @Nullable Log log) {
      AimPolicy.Advice first = plan.first();
      FixedAim fixed = plan.fixed();
      return new Longest(
          athlete,
          "longest",
          Form.of(plan.form()),
          plan.attempts(),
          Json.length(goal.noMark_m()),
          Json.aim(first.aim_m()),
          Json.aim(first.worth()),
          Json.chance(first.foulChance()),
          Json.aim(fixed.aim_m()),
          Json.aim(fixed.worth()),
          Json.chance(fixed.foulChance()),
          Json.aim(plan.policyGain()),
          bests == null ? null : rows(plan, bests, true),
          start,
          log);
    }
  }

  /** For a distance. */
  record Target(
      @Nullable String athlete,
      String goal,
      Form form,
      int attempts,
      double target_m,
      double aim_m,
      double chance,
      double chancePerAttempt,
      double foulChance,
      @Nullable List<Row> policy,
      @Nullable Start start,
      @Nullable Log log) {
    static Target of(@Nullable String athlete, AimPlan plan, Goal.Target goal, @Nullable List<Double> bests, @Nullable Start start, @Nullable Log log) {
      FixedAim fixed = plan.fixed();
      return new Target(
          athlete,
          "target",
          Form.of(plan.form()),
          plan.attempts(),
          Json.length(goal.metres()),
          Json.aim(fixed.aim_m()),
          Json.chance(fixed.worth()),
          Json.chance(plan.perAttempt()),
          Json.chance(fixed.foulChance()),
          bests == null ? null : rows(plan, bests, false),
          start,
          log);
    }
  }

  /** For the points of a combined event. */
  record PointsOf(
      @Nullable String athlete,
      String goal,
      String combined,
      Form form,
      int attempts,
      double firstAim_m,
      double expectedPoints,
      double foulChance,
      double fixedAim_m,
      double fixedExpectedPoints,
      double fixedFoulChance,
      @Nullable List<PointsRow> policy,
      @Nullable Start start,
      @Nullable Log log) {
    static PointsOf of(@Nullable String athlete, AimPlan plan, Goal.Points goal, @Nullable List<Double> bests, @Nullable Start start, @Nullable Log log) {
      AimPolicy.Advice first = plan.first();
      FixedAim fixed = plan.fixed();
      return new PointsOf(
          athlete,
          "points",
          goal.table().label(),
          Form.of(plan.form()),
          plan.attempts(),
          Json.aim(first.aim_m()),
          Json.aim(first.worth()),
          Json.chance(first.foulChance()),
          Json.aim(fixed.aim_m()),
          Json.aim(fixed.worth()),
          Json.chance(fixed.foulChance()),
          bests == null ? null : pointsRows(plan, bests),
          start,
          log);
    }
  }

  /** One attempt of the policy for points. */
  record PointsRow(int attempt, int attemptsLeft, PointsChoice noMark, List<PointsChoice> given) {}

  /** Where to aim for points, given the best so far; no aim when there is nothing left to win. */
  record PointsChoice(@Nullable Double best_m, @Nullable Double aim_m, @Nullable Double foulChance, double expectedPoints, boolean worthwhile) {
    static PointsChoice of(AimPolicy.Advice a) {
      return new PointsChoice(
          Json.lengthOrNull(a.best_m()),
          a.worthwhile() ? (Double) Json.aim(a.aim_m()) : null,
          a.worthwhile() ? (Double) Json.chance(a.foulChance()) : null,
          Json.aim(a.worth()),
          a.worthwhile());
    }
  }

  private static List<PointsRow> pointsRows(AimPlan plan, List<Double> bests) {
    return IntStream.rangeClosed(1, plan.attempts())
        .mapToObj(
            k ->
                new PointsRow(
                    k, plan.at(k, null).attemptsLeft(), PointsChoice.of(plan.at(k, null)), bests.stream().map(b -> PointsChoice.of(plan.at(k, b))).toList()))
        .toList();
  }

  /** One attempt of the policy. */
  record Row(int attempt, int attemptsLeft, Choice noMark, List<Choice> given) {}

  /** Where to aim, given the best so far; no aim when there is nothing left to win. */
  record Choice(
      @Nullable Double best_m, @Nullable Double aim_m, @Nullable Double foulChance, @Nullable Double expectedBest_m, @Nullable Double chance, boolean worthwhile) {
    static Choice of(AimPolicy.Advice a, boolean metres) {
      return new Choice(
          Json.lengthOrNull(a.best_m()),
          a.worthwhile() ? (Double) Json.aim(a.aim_m()) : null,
          a.worthwhile() ? (Double) Json.chance(a.foulChance()) : null,
          metres ? (Double) Json.aim(a.worth()) : null,
          metres ? null : (Double) Json.chance(a.worth()),
          a.worthwhile());
    }
  }

  /** What to do with the start mark. */
  record Start(double meanGapNow_m, double move_m, double foulChanceNow, double foulChanceThen, boolean told, String said) {
    static Start of(AimAdvice a) {
      return new Start(
          Json.aim(a.now().aim_m()),
          Json.aim(a.moveStart_m()),
          Json.chance(a.now().foulChance()),
          Json.chance(a.best().foulChance()),
          a.told(),
          a.words(LengthUnit.METRES));
    }
  }

  /** What the log of the board says. */
  record Log(
      int attempts, MarksAnswer.Spread meanGap, MarksAnswer.Spread gapSd, Points foulChance, MarksAnswer.@Nullable Spread effective, String from) {
    static Log of(AimAnswer a) {
      BoardSpread b = a.board();
      EffectiveForm e = a.effective();
      return new Log(
          b.attempts(),
          MarksAnswer.Spread.of(b.mean_m()),
          MarksAnswer.Spread.of(b.sd_m()),
          Points.of(b.foulChance()),
          e == null ? null : MarksAnswer.Spread.of(e.mean_m()),
          a.from());
    }
  }

  /** When the data cannot tell. */
  record CannotTell(String athlete, String goal, @Nullable Double firstAim_m, @Nullable Double aim_m, String cannotTell, Log log) {}

  /** What {@code aim --keep} and {@code --undo-last} print. */
  record Entry(String athlete, @Nullable Gap kept, @Nullable Gap takenBack) {
    static Entry of(String athlete, GapEntry entry, boolean back) {
      Gap gap = Gap.of(entry);
      return new Entry(athlete, back ? null : gap, back ? gap : null);
    }
  }

  /** A take-off at the board in training. */
  record Gap(long id, String date, String event, @Nullable Double gap_m, boolean foul, double startShift_m, @Nullable Double distance_m, String note) {
    static Gap of(GapEntry entry) {
      return new Gap(
          entry.id(),
          entry.date().toString(),
          entry.event().label(),
          Json.lengthOrNull(entry.gap_m()),
          entry.foul(),
          Json.length(entry.startShift_m()),
          Json.lengthOrNull(entry.distance_m()),
          entry.note());
    }
  }

  private static List<Row> rows(AimPlan plan, List<Double> bests, boolean metres) {
    return IntStream.rangeClosed(1, plan.attempts())
        .mapToObj(
            k ->
                new Row(
                    k,
                    plan.at(k, null).attemptsLeft(),
                    Choice.of(plan.at(k, null), metres),
                    bests.stream().map(b -> Choice.of(plan.at(k, b), metres)).toList()))
        .toList();
  }
}
