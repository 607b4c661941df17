package boundwright.cli;

import boundwright.approach.ApproachAnswer;
import boundwright.approach.board.StartAdvice;
import boundwright.approach.run.LearnedShifts;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunwaySpread;
import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.quantity.LengthUnit;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What {@code approach --json} prints; field by field in {@code docs/formats-json.md}. */
record RunUpAnswer(
    String athlete,
    String event,
    int steps,
    Points speed_mps,
    double aim_m,
    MarksAnswer.Spread startMark,
    int checkSteps,
    MarksAnswer.Spread checkMark,
    int earlyStep,
    MarksAnswer.Spread earlyMark,
    MarksAnswer.Spread secondLast,
    int runs,
    @Nullable SpreadAnswer spread,
    @Nullable String spreadMissing,
    StartAnswer start,
    ShiftsAnswer shifts,
    String from) {

  /** The spread along the runway. */
  record SpreadAnswer(int runs, List<StepAnswer> steps, int widestStepsOut, double steersChance, @Nullable Points onsetStepsOut, String said) {
    static SpreadAnswer of(RunwaySpread r) {
      return new SpreadAnswer(
          r.runs(),
          r.each().stream()
              .map(e -> new StepAnswer(e.stepsOut(), Json.length(e.mean_m()), MarksAnswer.Spread.of(e.sd_m()), e.seen()))
              .toList(),
          r.widest(),
          Json.chance(r.steers()),
          r.told() ? Points.of(r.onset()) : null,
          r.words());
    }
  }

  /** One step of it. */
  record StepAnswer(int stepsOut, double mean_m, MarksAnswer.Spread sd, int seen) {}

  /** Whether to move the start mark or train the rhythm. */
  record StartAnswer(
      String verdict, double move_m, MarksAnswer.Spread systematic, MarksAnswer.Spread random, double systematicPart, String said, String from) {
    static StartAnswer of(StartAdvice a, String from) {
      return new StartAnswer(
          a.verdict().name().toLowerCase(Locale.ROOT),
          Json.length(a.moveStart_m()),
          MarksAnswer.Spread.of(a.systematic_m()),
          MarksAnswer.Spread.of(a.random_m()),
          Json.chance(a.systematicPart()),
          a.words(LengthUnit.METRES),
          from);
    }
  }

  /** What wind and tiredness do. */
  record ShiftsAnswer(
      MarksAnswer.Spread perMpsOfTailWind, boolean windTold, MarksAnswer.Spread perPointOfTiredness, boolean tirednessTold, int runs, String said) {
    static ShiftsAnswer of(LearnedShifts l, String said) {
      return new ShiftsAnswer(
          MarksAnswer.Spread.of(l.wind_m()), l.windTold(), MarksAnswer.Spread.of(l.tiredness_m()), l.tirednessTold(), l.runs(), said);
    }
  }

  /** What {@code approach --keep} and {@code --undo-last} print. */
  record Entry(String athlete, @Nullable Run kept, @Nullable Run takenBack) {
    static Entry of(String athlete, RunThroughEntry entry, boolean back) {
      Run run = Run.of(entry);
      return new Entry(athlete, back ? null : run, back ? run : null);
    }
  }

  /** A run-through; a position that was not seen is null. */
  record Run(
      long id,
      String date,
      String event,
      int steps,
      double startMark_m,
      List<@Nullable Double> toBoard_m,
      @Nullable Double wind_mps,
      @Nullable Double tiredness,
      String note) {
    static Run of(RunThroughEntry entry) {
      RunThrough r = entry.run();
      return new Run(
          entry.id(),
          entry.date().toString(),
          entry.event().label(),
          r.steps(),
          Json.length(r.startMark_m()),
          r.toBoard_m().stream().<@Nullable Double>map(Json::lengthOrNull).toList(),
          r.wind(),
          r.tiredness(),
          entry.note());
    }
  }

  static RunUpAnswer of(Athlete who, Event event, ApproachAnswer a) {
    RunUpPlan p = a.plan();
    RunwaySpread spread = a.spread();
    return new RunUpAnswer(
        who.name(),
        event.label(),
        p.steps(),
        Points.of(p.speed()),
        Json.length(p.aim_m()),
        MarksAnswer.Spread.of(p.startMark_m()),
        p.checkSteps(),
        MarksAnswer.Spread.of(p.checkMark_m()),
        p.earlyStep(),
        MarksAnswer.Spread.of(p.earlyMark_m()),
        MarksAnswer.Spread.of(a.secondLast_m()),
        p.runs(),
        spread == null ? null : SpreadAnswer.of(spread),
        a.spreadMissing(),
        StartAnswer.of(a.start(), a.startFrom()),
        ShiftsAnswer.of(a.shifts(), a.shiftWords(LengthUnit.METRES)),
        a.from());
  }
}
