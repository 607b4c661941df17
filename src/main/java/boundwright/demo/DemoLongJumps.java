package boundwright.demo;

import boundwright.approach.board.GapEntry;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.RunJumps;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.TakeOff;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Combined;
import boundwright.meet.CombinedWind;
import boundwright.meet.Entrant;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.store.Workbench;
import boundwright.takeoffs.RunJumpRep;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * One of the invented squad jumps long too: take-offs from a full and a short run, take-offs in a row, run-throughs, take-offs at the board and the long jump
 * of a heptathlon, all from a dice-roll of its own around made-up figures. It shows how the program works and nothing about athletes.
 */
final class DemoLongJumps {
  /** Who jumps long. */
  static final String WHO = "Ines Sandpiper";
  /** How the heptathlon is called. */
  static final String MEET = "Saltmarsh Heptathlon (invented)";

  private static final long SEED = 20_260_514L;
  private static final int FULL_STEPS = 16;
  private static final int SHORT_STEPS = 6;
  private static final double START_M = 30.4;
  /** Marks of the others, round by round; 0 is a foul. */
  private static final double[][] RIVALS = {{5.21, 0, 5.34}, {4.88, 4.95, 0}, {5.62, 5.47, 5.55}};

  private final Workbench workbench;
  private final LocalDate today;
  private final Random random = new Random(SEED);

  private DemoLongJumps(Workbench workbench) {
    this.workbench = workbench;
    this.today = LocalDate.now(workbench.clock());
  }

  /** Adds them to a store that {@link DemoSquad} has just filled. */
  static void fill(Workbench workbench) {
    DemoLongJumps demo = new DemoLongJumps(workbench);
    Athlete who = workbench.athletes().byName(WHO).orElseThrow();
    for (int j = 0; j < 12; j++) {
      demo.jump(who, j);
    }
    for (int r = 0; r < 6; r++) {
      demo.runThrough(who, r);
    }
    demo.heptathlon(who);
    for (int r = 0; r < 10; r++) {
      demo.inARow(who, r);
    }
  }

  /** Run, run, jump x3 or x4 from 4 steps, on two days. */
  private void inARow(Athlete who, int r) {
    RunJumps pattern = new RunJumps(who.takeOffFoot(), RunJumps.USUAL_RUNNING, 3 + r % 2);
    double form = 1 + 0.02 * random.nextGaussian();
    double at = 0.06 * random.nextGaussian();
    List<Double> places = new ArrayList<>();
    for (int jump = 1; jump < pattern.jumps(); jump++) {
      at += form * (5.5 + 0.15 * jump + 0.16 * random.nextGaussian());
      places.add(hundredths(at));
    }
    double landing = hundredths(at + form * (3.9 + 0.15 * random.nextGaussian()));
    workbench
        .runJumps()
        .add(new RunJumpRep(0, who.id(), today.minusDays(r < 5 ? 54 : 47), pattern, 4, Surface.TRACK, true, places, landing, ""));
  }

  /** A full jump, and every third one a pop-up: slower and steeper, along the same made-up trade. */
  private void jump(Athlete who, int j) {
    boolean popUp = j % 3 == 2;
    double angle = (popUp ? 25.5 : 18.5) + 1.2 * random.nextGaussian();
    double speed = 7.6 - 0.16 * (angle - 20) + 0.07 * random.nextGaussian();
    double in = speed + (popUp ? 0.1 : 0.5) + 0.08 * random.nextGaussian();
    TakeOff t =
        TakeOff.ofAngle(
            hundredths(in), hundredths(0.30 + 0.012 * (angle - 18) + 0.01 * random.nextGaussian()), hundredths(speed), hundredths(angle),
            hundredths(1.10 + 0.015 * random.nextGaussian()), hundredths(0.60 + 0.02 * random.nextGaussian()), 0.33);
    double gap = hundredths(Math.max(0, 0.09 + 0.05 * random.nextGaussian()));
    double distance = hundredths(0.33 + t.flight().distance() + 0.42 + 0.04 * random.nextGaussian() - gap);
    workbench
        .longJumps()
        .add(new LongJump(0, who.id(), today.minusDays(58 - 2L * (j / 3)), who.takeOffFoot(), popUp ? SHORT_STEPS : FULL_STEPS, distance, gap, t, popUp ? "pop-up" : ""));
    if (!popUp) {
      workbench.boardLog().add(new GapEntry(0, who.id(), today.minusDays(58 - 2L * (j / 3)), Event.LONG_JUMP, gap, 0, distance, ""));
    }
  }

  private void runThrough(Athlete who, int r) {
    double gap = hundredths(0.08 + 0.09 * random.nextGaussian());
    workbench
        .runThroughs()
        .add(
            new RunThroughEntry(
                0, who.id(), today.minusDays(50 - 3L * r), Event.LONG_JUMP, RunThrough.toGap(FULL_STEPS, START_M, gap, null, (double) random.nextInt(5)), ""));
  }

  private void heptathlon(Athlete who) {
    MeetRules rules = MeetRules.DEFAULT.of(new Combined(CombinedTable.HEPTATHLON, CombinedWind.AVERAGE), MeetRules.COMBINED_ROUNDS);
    MeetSheet sheet =
        workbench.meets().add(MeetSheet.of(MEET, today.minusDays(33), BoardDistance.of(Event.LONG_JUMP).get(1), Scoring.HEPTATHLON, rules));
    Entrant own = workbench.meets().enter(sheet.id(), new Entrant(0, who.id(), who.name()));
    Entrant[] others = new Entrant[RIVALS.length];
    for (int i = 0; i < others.length; i++) {
      others[i] = workbench.meets().enter(sheet.id(), Entrant.rival("Bib " + (41 + i)));
    }
    double[] marks = {5.38, 5.51, 0};
    for (int round = 1; round <= MeetRules.COMBINED_ROUNDS; round++) {
      attempt(sheet, own, round, marks[round - 1], hundredths(0.04 + 0.1 * random.nextDouble()));
      for (int i = 0; i < others.length; i++) {
        attempt(sheet, others[i], round, RIVALS[i][round - 1], null);
      }
    }
  }

  private void attempt(MeetSheet sheet, Entrant who, int round, double mark, @Nullable Double gap) {
    double wind = Math.round(10 * (1.4 + 0.9 * random.nextGaussian())) / 10.0;
    Attempt a =
        mark == 0
            ? new Attempt(Event.LONG_JUMP, who.name(), round, Attempt.Result.FOUL, null, wind, null, 0)
            : new Attempt(Event.LONG_JUMP, who.name(), round, Attempt.Result.VALID, mark, wind, gap, 0);
    workbench.meets().add(sheet.id(), who.id(), a, "");
  }

  private static double hundredths(double value) {
    return Math.round(value * 100) / 100.0;
  }
}
