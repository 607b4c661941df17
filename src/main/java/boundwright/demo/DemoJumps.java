package boundwright.demo;

import boundwright.approach.board.GapEntry;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.flight.ContactModel;
import boundwright.flight.FlightChain.Link;
import boundwright.flight.FlightChain.Push;
import boundwright.flight.FlightChain;
import boundwright.jump.JumpEntry;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.Phases;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * Jumps, run-throughs, take-offs and a meet for the invented squad. Everything comes from a seeded dice-roll of its own, so
 * that the reps of {@link DemoSquad} stay what they were; it shows how the program works and nothing about athletes.
 */
final class DemoJumps {
  /** How the meet is called. */
  static final String MEET = "Saltmarsh Spring Meet (invented)";

  private static final long SEED = 20_260_513L;

  /**
   * An invented jumper.
   *
   * @param speed usual approach speed [m/s]
   * @param up usual vertical take-off speeds of hop, step and jump [m/s]
   * @param line contact line, by the speed gained
   * @param measured jumps with speeds
   * @param steps of the full run-up
   * @param pace length of the steps, over the usual
   * @param bias usual gap at the board [m]
   * @param scatter of the gap [m]
   * @param runs run-throughs with steps seen
   * @param takeOffs logged at the board in training
   */
  private record Jumper(
      String name,
      double speed,
      List<Double> up,
      ContactModel line,
      int measured,
      int steps,
      double pace,
      double bias,
      double scatter,
      int runs,
      int takeOffs) {}

  private static final List<Jumper> JUMPERS =
      List.of(
          new Jumper("Bram Curlew", 9.2, List.of(2.2, 1.75, 2.35), new ContactModel.ByGain(-1.1, 0.60), 9, 16, 1.03, 0.06, 0.09, 9, 14),
          new Jumper("Linnea Saltwort", 9.0, List.of(1.85, 1.55, 2.35), new ContactModel.ByGain(-1.6, 0.85), 8, 14, 0.99, 0.19, 0.10, 8, 16),
          new Jumper("Rafi Eelgrass", 8.5, List.of(2.35, 1.45, 1.95), new ContactModel.ByGain(-0.7, 0.45), 5, 14, 0.98, 0.12, 0.16, 6, 8),
          new Jumper("Ines Sandpiper", 7.9, List.of(1.75, 1.45, 2.2), new ContactModel.ByGain(-1.3, 0.68), 3, 12, 0.95, 0.15, 0.15, 0, 6),
          new Jumper("Wren Samphire", 8.0, List.of(2.0, 1.5, 1.9), new ContactModel.ByGain(-1.0, 0.60), 2, 12, 0.96, 0.10, 0.14, 2, 3));

  /** Marks of the meet in order of the draw, round by round; 0 is a foul, nothing yet for who has not jumped. */
  private static final double[][] RIVALS = {
    {11.42, 11.80, 11.61}, {12.31, 0, 12.18}, {0, 0, 10.95}, {11.07, 11.15, 0}, {12.02, 12.44}, {10.61, 10.48}, {11.55, 0}
  };

  private final Workbench workbench;
  private final LocalDate today;
  private final Random random = new Random(SEED);

  private DemoJumps(Workbench workbench) {
    this.workbench = workbench;
    this.today = LocalDate.now(workbench.clock());
  }

  /** Adds them to a store that {@link DemoSquad} has just filled. */
  static void fill(Workbench workbench) {
    DemoJumps demo = new DemoJumps(workbench);
    for (Jumper who : JUMPERS) {
      Athlete athlete = workbench.athletes().byName(who.name()).orElseThrow();
      demo.jumps(athlete, who);
      demo.runThroughs(athlete, who);
      demo.takeOffs(athlete, who);
    }
    demo.meet();
  }

  private void jumps(Athlete athlete, Jumper who) {
    for (int j = 0; j < who.measured(); j++) {
      MeasuredJump jump = jump(who);
      Phases made = jump.phases();
      Phases taped =
          new Phases(centimetres(made.hop_m()), centimetres(made.step_m()), centimetres(made.jump_m()), jump.toeToBoard_m(), made.from());
      workbench.jumpLog().add(new JumpEntry(0, athlete.id(), today.minusDays(60 - 5L * j), who.steps(), taped, jump, ""));
    }
    MeasuredJump last = jump(who);
    Phases p = last.phases();
    workbench
        .jumpLog()
        .add(
            new JumpEntry(
                0,
                athlete.id(),
                today.minusDays(9),
                who.steps(),
                new Phases(centimetres(p.hop_m()), centimetres(p.step_m()), centimetres(p.jump_m()), null, Phases.From.BOARD),
                null,
                "taped, no speeds"));
  }

  private MeasuredJump jump(Jumper who) {
    double[] high = {1.15, 1.10, 1.10};
    double[] low = {0.98, 0.98, 0.62};
    double[] ground = {0.70, 0.70, 0.90};
    List<MeasuredContact> contacts = new ArrayList<>();
    List<MeasuredJump.Body> bodies = new ArrayList<>();
    double speed = hundredths(who.speed() + 0.12 * random.nextGaussian());
    double fall = hundredths(-0.3 + 0.05 * random.nextGaussian());
    for (int i = 0; i < 3; i++) {
      double up = hundredths(who.up().get(i) + 0.17 * random.nextGaussian());
      Link link = FlightChain.run(who.line(), speed, fall, List.of(new Push(up, high[i], low[i], ground[i]))).get(0);
      double out = hundredths(link.vx() - 0.08 * random.nextGaussian());
      contacts.add(new MeasuredContact(Phase.IN_ORDER.get(i), speed, out, fall, up));
      bodies.add(new MeasuredJump.Body(high[i], low[i], ground[i]));
      speed = out;
      fall = hundredths(link.touchdownVy());
    }
    return new MeasuredJump(contacts, bodies, centimetres(Math.max(0.01, who.bias() + who.scatter() * random.nextGaussian())));
  }

  private void runThroughs(Athlete athlete, Jumper who) {
    double[] at = new double[who.steps()];
    double length = 0;
    for (int i = 0; i < who.steps(); i++) {
      length += who.pace() * (2.12 - 0.97 * Math.pow(0.776, i));
      at[i] = length;
    }
    double start = centimetres(length + who.bias());
    for (int r = 0; r < who.runs(); r++) {
      double wind = Math.round(10 * 1.2 * random.nextGaussian()) / 10.0;
      int tired = random.nextInt(6);
      boolean whole = r % 2 == 0;
      double error = 0;
      List<Double> toBoard = new ArrayList<>();
      for (int i = 0; i < who.steps(); i++) {
        int out = who.steps() - 1 - i;
        error += 0.075 * random.nextGaussian() - (out < 5 ? 0.35 * error : 0);
        double reached = at[i] + error + (0.05 * wind - 0.01 * (tired - 2)) * (i + 1) / who.steps();
        toBoard.add(whole || out <= 6 ? centimetres(start - reached) : Double.NaN);
      }
      workbench
          .runThroughs()
          .add(
              new RunThroughEntry(
                  0, athlete.id(), today.minusDays(40 - 4L * r), new RunThrough(who.steps(), start, toBoard, wind, (double) tired), ""));
    }
  }

  private void takeOffs(Athlete athlete, Jumper who) {
    for (int t = 0; t < who.takeOffs(); t++) {
      double gap = centimetres(who.bias() + who.scatter() * random.nextGaussian());
      boolean seen = gap >= 0 || random.nextBoolean();
      Double distance = gap >= 0 ? (Double) centimetres(effective(who) - gap) : null;
      workbench.boardLog().add(new GapEntry(0, athlete.id(), today.minusDays(35 - 2L * t), seen ? (Double) gap : null, 0, distance, ""));
    }
  }

  private double effective(Jumper who) {
    return jump(who).phases().total_m();
  }

  /** Two rounds done and the third under way: ten on the list, eight go on. */
  private void meet() {
    MeetSheet sheet =
        workbench
            .meets()
            .add(
                MeetSheet.of(
                    MEET, today, BoardDistance.ALL.get(4), Scoring.TRIPLE_JUMP_WOMEN, MeetRules.DEFAULT));
    List<Entrant> draw = new ArrayList<>();
    for (int i = 0; i < RIVALS.length; i++) {
      if (i == 2 || i == 4 || i == 6) {
        draw.add(squad(sheet, i == 2 ? "Wren Samphire" : i == 4 ? "Linnea Saltwort" : "Ines Sandpiper"));
      }
      draw.add(workbench.meets().enter(sheet.id(), Entrant.rival("Bib " + (21 + i))));
    }
    double[][] own = {{11.02, 0, 11.20}, {0, 11.93}, {10.70, 10.88}};
    for (int round = 1; round <= 3; round++) {
      int rival = 0;
      int athlete = 0;
      for (Entrant who : draw) {
        double[] marks = who.isRival() ? RIVALS[rival++] : own[athlete++];
        if (round <= marks.length) {
          Double gap = who.isRival() ? null : (Double) centimetres(0.05 + 0.25 * random.nextDouble());
          workbench.meets().add(sheet.id(), who.id(), attempt(who.name(), round, marks[round - 1], gap), "");
        }
      }
    }
  }

  private Entrant squad(MeetSheet sheet, String name) {
    Athlete athlete = workbench.athletes().byName(name).orElseThrow();
    return workbench.meets().enter(sheet.id(), new Entrant(0, athlete.id(), name));
  }

  private Attempt attempt(String name, int round, double mark, @Nullable Double gap) {
    double wind = Math.round(10 * (0.6 + 0.9 * random.nextGaussian())) / 10.0;
    return mark == 0
        ? new Attempt(name, round, Attempt.Result.FOUL, null, wind, null, 0)
        : new Attempt(name, round, Attempt.Result.VALID, mark, wind, gap, 0);
  }

  private static double centimetres(double metres) {
    return Math.round(metres * 100) / 100.0;
  }

  private static double hundredths(double speed) {
    return Math.round(speed * 100) / 100.0;
  }
}
