package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.jump.takeoff.BestAngle;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.LongJumpAnswer;
import boundwright.jump.takeoff.LongWorth;
import boundwright.jump.takeoff.SpeedForAngle;
import boundwright.jump.takeoff.TakeOff;
import boundwright.jump.takeoff.Touchdown;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What {@code long-jump --json} prints; field by field in {@code docs/formats-json.md}. */
final class LongJumpAnswers {
  private LongJumpAnswers() {}

  /** A take-off. */
  record OneTakeOff(
      @Nullable Double vxIn_mps,
      @Nullable Double touchdown_m,
      double vx_mps,
      double vy_mps,
      double speed_mps,
      double angle_deg,
      double takeOffHeight_m,
      double landingHeight_m,
      @Nullable Double ahead_m,
      double flight_s,
      double flight_m) {
    static OneTakeOff of(TakeOff t) {
      return new OneTakeOff(
          Json.lengthOrNull(t.vxIn()),
          Json.lengthOrNull(t.touchdown_m()),
          Json.length(t.vx()),
          Json.length(t.vy()),
          Json.length(t.speed()),
          Json.length(t.angle_deg()),
          Json.length(t.takeOffHeight_m()),
          Json.length(t.landingHeight_m()),
          Json.lengthOrNull(t.ahead_m()),
          Json.aim(t.flight().time()),
          Json.length(t.flight().distance()));
    }
  }

  /** Where the metres of a jump are. */
  record Parts(double takeOff_m, double flight_m, double landing_m, double given_m) {
    static @Nullable Parts of(LongJump j) {
      LongJump.Parts p = j.parts();
      return p == null ? null : new Parts(Json.length(p.takeOff_m()), Json.length(p.flight_m()), Json.length(p.landing_m()), Json.length(p.given_m()));
    }
  }

  /** A long jump as kept. */
  record One(
      long id,
      String date,
      String foot,
      @Nullable Integer runUpSteps,
      double distance_m,
      @Nullable Double gap_m,
      @Nullable Double effective_m,
      @Nullable OneTakeOff takeOff,
      @Nullable Parts parts,
      String note) {
    static One of(LongJump j) {
      TakeOff t = j.takeOff();
      return new One(
          j.id(),
          j.date().toString(),
          j.foot().label(),
          j.steps(),
          Json.length(j.distance_m()),
          Json.lengthOrNull(j.gap_m()),
          Json.lengthOrNull(j.effective_m()),
          t == null ? null : OneTakeOff.of(t),
          Parts.of(j),
          j.note());
    }
  }

  /** What {@code --keep} and {@code --undo-last} print. */
  record Entry(String athlete, @Nullable One kept, @Nullable One takenBack) {
    static Entry of(Athlete who, LongJump jump, boolean back) {
      One one = One.of(jump);
      return new Entry(who.name(), back ? null : one, back ? one : null);
    }
  }

  /** The trade of speed for angle; angles and worth only where they are told. */
  record Trade(
      int takeOffs,
      double usualAngle_deg,
      double leastAngle_deg,
      double mostAngle_deg,
      Points speedPerDegree_mps,
      @Nullable Points bestAngle_deg,
      @Nullable Points bestWorth_m,
      @Nullable String cannotTell) {
    static @Nullable Trade of(@Nullable BestAngle b) {
      if (b == null) {
        return null;
      }
      SpeedForAngle t = b.trade();
      boolean told = b.cannotTell() == null;
      return new Trade(
          t.takeOffs(),
          Json.length(t.middle_deg()),
          Json.length(t.least_deg()),
          Json.length(t.most_deg()),
          Points.of(t.slope()),
          told ? Points.of(b.best_deg()) : null,
          told ? Points.of(b.worth_m()) : null,
          b.cannotTell());
    }
  }

  /** What the foot's place does. */
  record Place(int takeOffs, @Nullable Points upPer10cm_mps, @Nullable Points lossPer10cm_mps, @Nullable String cannotTell, String said) {
    static @Nullable Place of(@Nullable Touchdown t) {
      return t == null ? null : new Place(t.takeOffs(), Points.orNull(t.upPer_10cm()), Points.orNull(t.lossPer_10cm()), t.cannotTell(), t.words());
    }
  }

  /** What a change is worth. */
  record Worth(String change, MarksAnswer.Spread worth, boolean told) {
    static Worth of(LongWorth w) {
      return new Worth(w.change().name().toLowerCase(Locale.ROOT), MarksAnswer.Spread.of(w.metres()), w.told());
    }
  }

  /** All of an athlete. */
  record Answer(
      String athlete, List<One> jumps, int withSpeeds, @Nullable Trade trade, @Nullable Place touchdown, List<Worth> worth, String said, String from) {
    static Answer of(Athlete who, LongJumpAnswer a) {
      return new Answer(
          who.name(),
          a.jumps().stream().map(One::of).toList(),
          a.takeOffs(),
          Trade.of(a.best()),
          Place.of(a.touchdown()),
          a.worth().stream().map(Worth::of).toList(),
          a.words(),
          a.from());
    }
  }
}
