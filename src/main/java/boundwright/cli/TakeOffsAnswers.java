package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.load.DayVerdict;
import boundwright.quantity.LengthUnit;
import boundwright.runway.SandMarks;
import boundwright.runway.Window;
import boundwright.takeoffs.RunJumpMarks;
import boundwright.takeoffs.RunJumpRep;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What {@code take-offs --json} prints; field by field in {@code docs/formats-json.md}. */
final class TakeOffsAnswers {
  private TakeOffsAnswers() {}

  /** What is repeated. */
  record Pattern(String title, String firstFoot, int runningSteps, int takeOffs, int everyContact, MarksAnswer.Contacts contacts) {
    static Pattern of(RunJumps p) {
      return new Pattern(
          p.title(), p.first().label(), p.running(), p.jumps(), p.every(), new MarksAnswer.Contacts(p.count(Foot.LEFT), p.count(Foot.RIGHT)));
    }
  }

  /** One take-off. */
  record Place(int takeOff, String foot, MarksAnswer.Spread fromMark, @Nullable Double toSand_m) {
    static Place of(RunJumpMarks.TakeOffMark t) {
      return new Place(t.jump(), t.foot().label(), MarksAnswer.Spread.of(t.fromMark_m()), Json.lengthOrNull(t.toSand_m()));
    }
  }

  /** Fewer take-offs with which marks work. */
  record Fewer(int takeOffs, double min_m, double max_m) {
    static @Nullable Fewer of(RunJumpMarks.@Nullable Fewer f) {
      return f == null ? null : new Fewer(f.jumps(), Json.length(f.window().min_m()), Json.length(f.window().max_m()));
    }
  }

  /** The marks. */
  record Answer(
      String athlete,
      Pattern pattern,
      int approachSteps,
      boolean flat,
      @Nullable Double markToSand_m,
      MarksAnswer.@Nullable WindowAnswer window_m,
      MarksAnswer.@Nullable Chance chance,
      List<Place> places,
      MarksAnswer.Spread landing,
      MarksAnswer.Spread startToMark,
      double needed_m,
      @Nullable Fewer fewer,
      int measuredReps,
      String from,
      String sure,
      String instead,
      List<String> warnings,
      MarksAnswer.Load load) {
    static Answer of(Athlete who, RunJumpMarks m, DayVerdict day, List<String> wayBack, LengthUnit in) {
      SandMarks sand = m.sand();
      Window w = sand == null ? null : sand.window();
      return new Answer(
          who.name(),
          Pattern.of(m.pattern()),
          m.steps(),
          sand == null,
          sand == null ? null : (Double) Json.length(sand.best_m()),
          sand == null ? null : new MarksAnswer.WindowAnswer(w == null ? null : (Double) Json.length(w.min_m()), w == null ? null : (Double) Json.length(w.max_m())),
          sand == null ? null : new MarksAnswer.Chance(m.askedInHundred() / 100.0, sand.inHundred() / 100.0),
          m.takeOffs().stream().map(Place::of).toList(),
          MarksAnswer.Spread.of(m.landing()),
          MarksAnswer.Spread.of(m.runUp().length()),
          Json.length(m.needed_m()),
          Fewer.of(m.fewer()),
          m.reps(),
          m.from(),
          m.sure(in),
          m.instead(in),
          m.warnings(),
          MarksAnswer.Load.of(day, wayBack));
    }
  }

  /** A rep as kept. */
  record One(
      long id, String date, Pattern pattern, int approachSteps, String surface, boolean flat, List<@Nullable Double> takeOffs_m, @Nullable Double landing_m, String note) {
    static One of(RunJumpRep r) {
      return new One(
          r.id(), r.date().toString(), Pattern.of(r.pattern()), r.steps(), r.surface().label(), !r.inSand(),
          r.takeOffs_m().stream().<@Nullable Double>map(Json::lengthOrNull).toList(), Json.lengthOrNull(r.landing_m()), r.note());
    }
  }

  /** What {@code --keep} and {@code --undo-last} print. */
  record Entry(String athlete, @Nullable One kept, @Nullable One takenBack) {
    static Entry of(Athlete who, RunJumpRep rep, boolean back) {
      One one = One.of(rep);
      return new Entry(who.name(), back ? null : one, back ? one : null);
    }
  }
}
