package boundwright.approach.legs;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.LongJumpLog;
import boundwright.jump.takeoff.TakeOff;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Gathers what was measured of each leg: flights of reps whose ends were seen, and long jumps. */
public final class LegDesk {
  /** Only the newest of this many days, since a body changes (judgement). */
  public static final int DAYS = 365;

  private final RepStore reps;
  private final LongJumpLog longJumps;

  /** Works on these. */
  public LegDesk(RepStore reps, LongJumpLog longJumps) {
    this.reps = reps;
    this.longJumps = longJumps;
  }

  /** All measures in their order; those of which nothing was measured are left out. */
  public List<LegLook> looks(Athlete athlete, LocalDate today) {
    List<OffLeg> all = measured(athlete, today);
    return Arrays.stream(Measure.values()).filter(m -> all.stream().anyMatch(o -> o.what() == m)).map(m -> LegLook.of(m, all)).toList();
  }

  private List<OffLeg> measured(Athlete athlete, LocalDate today) {
    LocalDate from = today.minusDays(DAYS);
    List<OffLeg> out = new ArrayList<>();
    for (Rep rep : reps.since(athlete.id(), from)) {
      flights(rep, out);
    }
    for (LongJump j : longJumps.longJumps(athlete.id())) {
      Integer steps = j.steps();
      if (steps != null && !j.date().isBefore(from)) {
        Double effective = j.effective_m();
        out.add(new OffLeg(Measure.LONG_JUMP, j.foot(), j.date(), steps, 1, effective == null ? j.distance_m() : effective));
        TakeOff t = j.takeOff();
        if (t != null) {
          out.add(new OffLeg(Measure.TAKE_OFF_SPEED, j.foot(), j.date(), steps, 1, t.speed()));
        }
      }
    }
    return out;
  }

  /** Flights of which both ends were seen; the mark is the first. */
  private static void flights(Rep rep, List<OffLeg> out) {
    List<Double> prints = rep.footprints_m();
    double before = 0;
    for (Flight f : rep.sequence().flights()) {
      boolean last = f.kind() == FlightKind.JUMP;
      Double landing = rep.landing_m();
      double end = last ? landing == null ? Double.NaN : landing : f.order() <= prints.size() ? prints.get(f.order() - 1) : Double.NaN;
      double length = end - before;
      // onto grass it ends elsewhere than in sand
      boolean sand = !last || rep.markToSand_m() != null;
      if (!Double.isNaN(length) && sand) {
        Measure what = last ? Measure.LAST_FLIGHT : f.kind() == FlightKind.HOP ? Measure.HOP : Measure.BOUND;
        out.add(new OffLeg(what, f.from(), rep.date(), rep.approachSteps(), f.order(), length));
      }
      before = end;
    }
  }
}
