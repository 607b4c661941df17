package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.LongJumpAnswer;
import boundwright.jump.takeoff.LongWorth;
import boundwright.jump.takeoff.TakeOff;
import boundwright.jump.takeoff.Touchdown;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The flight of a long jump, and what an athlete's kept long jumps say. */
@Command(
    name = "long-jump",
    description = {
      "The flight of a long jump from its take-off; of an athlete their own trade of speed for angle, where the metres",
      "are, and what small changes are worth, or that the data cannot tell.",
      "Examples: boundwright long-jump --forward 8.5 --up 3.2 --high 1.25 --low 0.65",
      "          boundwright long-jump --athlete NAME --keep --distance 5.86 --gap 0.07 --run-up 16%n"
    })
final class LongJumpCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "Whose kept long jumps; any case.")
  private @Nullable String athlete;

  @Option(names = "--keep", description = "Keep this jump with the athlete: --distance, and what else was measured.")
  private boolean keep;

  @Option(names = "--distance", paramLabel = "LENGTH", description = "From the take-off line.")
  private @Nullable String distance;

  @Option(names = "--gap", paramLabel = "LENGTH", description = "Toe to take-off line, + behind the line.")
  private @Nullable String gap;

  @Option(names = "--foot", paramLabel = "FOOT", description = "Taken off from: right or left. Default: the athlete's own.")
  private @Nullable String foot;

  @Option(names = "--run-up", paramLabel = "N", description = "Steps of the run-up.")
  private @Nullable Integer steps;

  @Option(names = "--forward", paramLabel = "M/S", description = "Forward speed at take-off, with --up; or give --speed and --angle.")
  private @Nullable Double forward;

  @Option(names = "--up", paramLabel = "M/S", description = "Vertical speed at take-off.")
  private @Nullable Double up;

  @Option(names = "--speed", paramLabel = "M/S", description = "Speed of the whole velocity at take-off, with --angle.")
  private @Nullable Double speed;

  @Option(names = "--angle", paramLabel = "DEGREES", description = "Take-off angle above the horizontal.")
  private @Nullable Double angle;

  @Option(names = "--high", paramLabel = "LENGTH", description = "Centre of mass at take-off.")
  private @Nullable String high;

  @Option(names = "--low", paramLabel = "LENGTH", description = "Centre of mass when the sand is touched.")
  private @Nullable String low;

  @Option(names = "--into", paramLabel = "M/S", description = "Forward speed into the last contact.")
  private @Nullable Double into;

  @Option(names = "--touchdown", paramLabel = "LENGTH", description = "Toe ahead of the centre of mass when the foot comes down.")
  private @Nullable String touchdown;

  @Option(names = "--ahead", paramLabel = "LENGTH", description = "Centre of mass ahead of the toe when the foot leaves.")
  private @Nullable String ahead;

  @Mixin private JumpDayOptions when = new JumpDayOptions();

  @Option(names = "--undo-last", description = "Take back the long jump of this athlete that was kept last.")
  private boolean undoLast;

  @Mixin private UnitOption unit = new UnitOption();

  LongJumpCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (athlete == null) {
      if (keep || undoLast) {
        throw new RefusedException("Say whose jump it is with --athlete NAME: jumps are kept with their athlete.");
      }
      TakeOff given = takeOff(unit.in(CoachSettings.DEFAULT));
      if (given == null) {
        throw new RefusedException("Give a take-off (--forward, --up, --high and --low), or an athlete whose long jumps are kept (--athlete NAME).");
      }
      flight(s, given, unit.in(CoachSettings.DEFAULT));
      return 0;
    }
    try (Workbench bench = data.open(s)) {
      LengthUnit in = unit.in(bench);
      Athlete who = DataOptions.athlete(bench, athlete);
      if (undoLast) {
        entry(s, who, undo(bench, who), in);
      } else if (keep) {
        entry(s, who, bench.longJumps().add(jump(s, who, in)), in);
      } else if (distance != null || gap != null) {
        throw new RefusedException("--distance and --gap belong to a jump: add --keep to keep it.");
      } else {
        TakeOff given = takeOff(in);
        if (given == null) {
          answer(s, who, bench.longJumpDesk().answer(who), in);
        } else {
          flight(s, given, in);
        }
      }
      return 0;
    }
  }

  private void answer(Surroundings s, Athlete who, LongJumpAnswer answer, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), LongJumpAnswers.Answer.of(who, answer));
    } else {
      print(s, who, answer, in);
    }
  }

  private LongJump jump(Surroundings s, Athlete who, LengthUnit in) {
    if (distance == null) {
      throw new RefusedException("A long jump is kept with its distance: --distance LENGTH, from the take-off line.");
    }
    Foot from = foot == null ? who.takeOffFoot() : Choices.choice("foot", foot, List.of(Foot.values()), Foot::label);
    return new LongJump(
        0, who.id(), when.day(s), from, steps, in.read("distance", distance), Choices.length(in, "board gap", gap), takeOff(in), when.note());
  }

  /** The take-off that was given, or null without one; half of one is refused. */
  private @Nullable TakeOff takeOff(LengthUnit in) {
    boolean parts = forward != null || up != null;
    boolean whole = speed != null || angle != null;
    if (!parts && !whole) {
      if (high != null || low != null || into != null || touchdown != null || ahead != null) {
        throw new RefusedException("--high, --low, --into, --touchdown and --ahead go with the speeds of a take-off: give --forward and --up, or --speed and --angle.");
      }
      return null;
    }
    if (parts == whole || (parts ? forward == null || up == null : speed == null || angle == null) || high == null || low == null) {
      throw new RefusedException("A take-off has --forward and --up, or --speed and --angle, and the two heights --high and --low.");
    }
    Double down = Choices.length(in, "touchdown distance", touchdown);
    Double far = Choices.length(in, "take-off distance", ahead);
    double from = in.read("take-off height", high);
    double to = in.read("landing height", low);
    return forward != null && up != null
        ? new TakeOff(into, down, forward, up, from, to, far)
        : TakeOff.ofAngle(into, down, speed == null ? 0 : speed, angle == null ? 0 : angle, from, to, far);
  }

  private static LongJump undo(Workbench bench, Athlete who) {
    LongJump last =
        bench.longJumps().longJumps(who.id()).stream()
            .max(Comparator.comparingLong(LongJump::id))
            .orElseThrow(() -> new RefusedException(who.name() + " has no long jump to take back."));
    return bench.longJumps().removeLongJump(who.id(), last.id()).orElse(last);
  }

  private void entry(Surroundings s, Athlete who, LongJump jump, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), LongJumpAnswers.Entry.of(who, jump, undoLast));
    } else {
      MarksText text = new MarksText(s.out(), in);
      text.line(undoLast ? "Taken back" : "Kept", who.name() + ", " + jump.date() + ".");
      one(text, jump, in);
    }
  }

  private void flight(Surroundings s, TakeOff t, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), LongJumpAnswers.OneTakeOff.of(t));
    } else {
      flight(new MarksText(s.out(), in), t, in);
    }
  }

  private static void flight(MarksText text, TakeOff t, LengthUnit in) {
    text.line("FLIGHT", in.write(t.flight().distance()) + String.format(Locale.ROOT, " in %.4f s", t.flight().time()));
    text.line("Take-off", String.format(Locale.ROOT, "%.2f m/s at %.1f degrees", t.speed(), t.angle_deg()));
  }

  private static void one(MarksText text, LongJump j, LengthUnit in) {
    Double gap = j.gap_m();
    Integer from = j.steps();
    TakeOff t = j.takeOff();
    LongJump.Parts p = j.parts();
    text.line(
        "JUMP",
        in.write(j.distance_m()) + " off the " + j.foot().label() + (from == null ? "" : ", " + Athlete.fromSteps(from))
            + (gap == null ? "" : ", gap " + in.write(gap)));
    if (t != null) {
      flight(text, t, in);
    }
    if (p != null) {
      text.wrapped(
          "Parts",
          "take-off " + in.write(p.takeOff_m()) + ", flight " + in.write(p.flight_m()) + ", landing " + in.write(p.landing_m()) + ", given away "
              + in.write(p.given_m()) + ".");
    }
  }

  private static void print(Surroundings s, Athlete who, LongJumpAnswer a, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    text.wrapped("ANGLE", a.words());
    Touchdown touchdown = a.touchdown();
    if (touchdown != null) {
      text.wrapped("Touchdown", touchdown.words());
    }
    LongJump newest = a.newest();
    if (newest != null) {
      s.out().println();
      s.out().println(who.name() + ", newest of " + a.jumps().size() + " kept, " + newest.date() + ":");
      one(text, newest, in);
    }
    s.out().println();
    text.wrapped("From", a.from());
    if (!a.worth().isEmpty()) {
      s.out().println();
      s.out().println("Where the metres are, nine times in ten between the last two:");
      for (LongWorth w : a.worth()) {
        s.out()
            .println(
                String.format(
                    Locale.ROOT,
                    "  %-48s%10s   %10s  %10s%s",
                    w.change().label(), in.write(w.metres().p50()), in.write(w.metres().p05()), in.write(w.metres().p95()), w.told() ? "" : "  cannot tell"));
      }
    }
  }
}
