package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.jump.JumpEntry;
import boundwright.jump.JumpSettings;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.PhaseAnswer;
import boundwright.jump.Phases;
import boundwright.jump.Shares;
import boundwright.jump.WhereMetres;
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

/** How a triple jump is shared between hop, step and jump, and where the metres of an athlete are. */
@Command(
    name = "phases",
    description = {
      "How a triple jump is shared between hop, step and jump; of an athlete also what each contact costs, the",
      "shares that would carry furthest, and what small changes are worth.",
      "Examples: boundwright phases --hop 5.86 --step 3.82 --jump 5.99",
      "          boundwright phases --athlete NAME%n"
    })
final class PhasesCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "Whose kept jumps; any case. Without lengths, the newest is shown.")
  private @Nullable String athlete;

  @Option(names = "--hop", paramLabel = "LENGTH", description = "Length of the hop.")
  private @Nullable String hop;

  @Option(names = "--step", paramLabel = "LENGTH", description = "Length of the step.")
  private @Nullable String step;

  @Option(names = "--jump", paramLabel = "LENGTH", description = "Length of the jump.")
  private @Nullable String jump;

  @Option(names = "--toe-to-board", paramLabel = "LENGTH", description = "Toe to take-off line at the hop, + behind the line.")
  private @Nullable String toeToBoard;

  @Option(names = "--from", paramLabel = "WHERE", description = "Where the hop is measured from: board (as in results) or toe. Default: board.")
  private String from = "board";

  @Option(
      names = "--contacts",
      paramLabel = "SPEEDS",
      description = {
        "Speeds of the three contacts [m/s]: forward in, forward out, vertical in (down is negative), vertical out,",
        "contacts separated by ;: \"9.1 8.3 -0.3 2.2; 8.3 7.5 -2.7 1.6; 7.5 6.4 -2.2 2.1\". Needs --heights."
      })
  private @Nullable String contacts;

  @Option(
      names = "--heights",
      paramLabel = "HEIGHTS",
      description = "Centre of mass at take-off and next touchdown of each phase [m]: \"1.15 0.98; 1.10 0.97; 1.12 0.60\".")
  private @Nullable String heights;

  @Option(
      names = "--ground",
      paramLabel = "LENGTHS",
      description = "With --contacts instead of lengths: take-off plus landing distance of each phase [m]: \"0.7; 0.7; 0.9\".")
  private @Nullable String ground;

  @Option(names = "--threshold", paramLabel = "POINTS", description = "Percentage points by which a share must lead. Default: the settings (2).")
  private @Nullable Double threshold;

  @Option(names = "--keep", description = "Keep this jump with the athlete.")
  private boolean keep;

  @Option(names = "--run-up", paramLabel = "N", description = "Steps of the run-up, kept with the jump.")
  private @Nullable Integer steps;

  @Mixin private JumpDayOptions when = new JumpDayOptions();

  @Option(names = "--undo-last", description = "Take back the jump of this athlete that was kept last.")
  private boolean undoLast;

  @Mixin private UnitOption unit = new UnitOption();

  PhasesCommand(BoundwrightCommand top) {
    this.top = top;
  }

  private boolean given() {
    return hop != null || step != null || jump != null || contacts != null;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (athlete == null) {
      if (keep || undoLast) {
        throw new RefusedException("Say whose jump it is with --athlete NAME: jumps are kept with their athlete.");
      }
      if (!given()) {
        throw new RefusedException("Give the three lengths (--hop, --step, --jump), or an athlete whose jumps are kept (--athlete NAME).");
      }
      LengthUnit in = unit.in(CoachSettings.DEFAULT);
      print(s, null, lengths(in), speeds(in), threshold == null ? Shares.DEFAULT_THRESHOLD : threshold, in);
      return 0;
    }
    try (Workbench bench = data.open(s)) {
      LengthUnit in = unit.in(bench);
      JumpSettings settings = bench.jumpLog().settings();
      Athlete who = DataOptions.athlete(bench, athlete);
      double points = threshold == null ? settings.classThreshold() : threshold;
      if (undoLast) {
        entry(s, who, undo(bench, who), points, in);
      } else if (keep) {
        JumpEntry kept =
            bench.jumpLog().add(new JumpEntry(0, who.id(), when.day(s), steps, lengths(in), speeds(in), when.note()));
        entry(s, who, kept, points, in);
      } else if (given()) {
        print(s, who, lengths(in), speeds(in), points, in);
      } else {
        PhaseAnswer answer = bench.phaseDesk().answer(who);
        if (top.json()) {
          json(s, who, answer, points);
        } else {
          print(s, who, answer, points, in);
        }
      }
      return 0;
    }
  }

  private Phases lengths(LengthUnit in) {
    if (hop == null && step == null && jump == null && ground != null) {
      return measured(in, null).phases();
    }
    if (hop == null || step == null || jump == null) {
      throw new RefusedException("A triple jump has three lengths: give --hop, --step and --jump" + (contacts == null ? "." : ", or --ground with --contacts."));
    }
    return new Phases(
        in.read("hop", hop),
        in.read("step", step),
        in.read("jump", jump),
        Choices.length(in, "toe to board", toeToBoard),
        Choices.choice("start of the hop", from, List.of(Phases.From.values()), f -> f.name().toLowerCase(Locale.ROOT)));
  }

  private @Nullable MeasuredJump speeds(LengthUnit in) {
    if (contacts == null) {
      if (heights != null || ground != null) {
        throw new RefusedException("--heights and --ground go with the speeds of the contacts: give --contacts too.");
      }
      return null;
    }
    return measured(in, ground == null ? lengths(in) : null);
  }

  /** From the toe: the lengths if they are there, else the ground distances. */
  private MeasuredJump measured(LengthUnit in, @Nullable Phases lengths) {
    List<List<Double>> c = rows("contacts", contacts, 4);
    List<List<Double>> h = rows("heights", heights, 2);
    List<MeasuredContact> all = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      List<Double> one = c.get(i);
      all.add(new MeasuredContact(Phase.IN_ORDER.get(i), one.get(0), one.get(1), one.get(2), one.get(3)));
    }
    Double toe = Choices.length(in, "toe to board", toeToBoard);
    if (lengths != null) {
      return MeasuredJump.ofLengths(
          all,
          lengths.fromToe_m(),
          h.stream().map(r -> r.get(0)).toList(),
          h.stream().map(r -> r.get(1)).toList(),
          toe);
    }
    List<List<Double>> g = rows("ground", ground, 1);
    List<MeasuredJump.Body> bodies = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      bodies.add(new MeasuredJump.Body(h.get(i).get(0), h.get(i).get(1), g.get(i).get(0)));
    }
    return new MeasuredJump(all, bodies, toe);
  }

  private static List<List<Double>> rows(String option, @Nullable String written, int each) {
    RefusedException wrong =
        new RefusedException(
            "--" + option + " has three parts separated by ';', one for each phase, with " + each + (each == 1 ? " number" : " numbers")
                + " each; " + (written == null ? "it was not given." : "this is '" + written.strip() + "'."));
    String[] parts = written == null ? new String[0] : written.split(";", -1);
    if (parts.length != 3) {
      throw wrong;
    }
    List<List<Double>> out = new ArrayList<>();
    for (String part : parts) {
      List<Double> row = new ArrayList<>();
      for (String number : part.strip().split("\\s+", -1)) {
        try {
          row.add(Double.valueOf(number));
        } catch (NumberFormatException e) {
          throw wrong;
        }
      }
      if (row.size() != each) {
        throw wrong;
      }
      out.add(row);
    }
    return out;
  }

  private static JumpEntry undo(Workbench bench, Athlete who) {
    JumpEntry last =
        bench.jumpLog().jumps(who.id()).stream()
            .max(Comparator.comparingLong(JumpEntry::id))
            .orElseThrow(() -> new RefusedException(who.name() + " has no jump to take back."));
    return bench.jumpLog().removeJump(who.id(), last.id()).orElse(last);
  }

  private void entry(Surroundings s, Athlete who, JumpEntry jump, double points, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), PhasesAnswer.Entry.of(who.name(), jump, points, undoLast));
    } else {
      MarksText text = new MarksText(s.out(), in);
      text.line(undoLast ? "Taken back" : "Kept", who.name() + ", " + jump.date() + ".");
      jump(text, JumpAnswer.of(jump, points), in);
    }
  }

  private void print(
      Surroundings s, @Nullable Athlete who, Phases phases, @Nullable MeasuredJump speeds, double points, LengthUnit in) {
    JumpAnswer jumped = JumpAnswer.of(phases, speeds, points);
    if (top.json()) {
      Json.print(s.out(), new PhasesAnswer(who == null ? null : who.name(), jumped, points, null));
    } else {
      jump(new MarksText(s.out(), in), jumped, in);
    }
  }

  private static void json(Surroundings s, Athlete who, PhaseAnswer answer, double points) {
    JumpEntry newest = answer.newest();
    PhasesAnswer.Kept kept = PhasesAnswer.Kept.of(answer);
    Json.print(
        s.out(),
        newest == null
            ? PhasesAnswer.None.of(who.name(), points, kept)
            : new PhasesAnswer(who.name(), JumpAnswer.of(newest, points), points, kept));
  }

  private static void print(Surroundings s, Athlete who, PhaseAnswer answer, double points, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    text.wrapped("SHARES", answer.words(in));
    JumpEntry newest = answer.newest();
    if (newest != null) {
      s.out().println();
      s.out().println(who.name() + ", newest of " + answer.jumps().size() + " kept, " + newest.date() + ":");
      jump(text, JumpAnswer.of(newest, points), in);
    }
    s.out().println();
    text.wrapped("Contacts", answer.line().often());
    text.wrapped("From", answer.from());
    if (!answer.worth().isEmpty()) {
      s.out().println();
      s.out().println("Where the metres are, nine times in ten between the last two:");
      for (WhereMetres.Worth w : answer.worth()) {
        s.out()
            .println(
                String.format(
                    Locale.ROOT,
                    "  %-34s%14s   %14s  %14s%s",
                    w.change().label(), in.write(w.metres().p50()), in.write(w.metres().p05()), in.write(w.metres().p95()),
                    w.told() ? "" : "  cannot tell"));
      }
    }
  }

  private static void jump(MarksText text, JumpAnswer j, LengthUnit in) {
    text.line(
        "PHASES",
        String.format(Locale.ROOT, "hop %.1f %%, step %.1f %%, jump %.1f %%", 100 * j.shares().hop(), 100 * j.shares().step(), 100 * j.shares().jump())
            + ": " + j.kind());
    text.line(
        "Lengths",
        in.write(j.hop_m()) + ", " + in.write(j.step_m()) + ", " + in.write(j.jump_m()) + "; together " + in.write(j.total_m()));
    if (j.toeToBoard_m() != null && j.effective_m() != null && j.official_m() != null) {
      text.line("Board", "toe to line " + in.write(j.toeToBoard_m()) + "; official " + in.write(j.official_m()) + ", effective " + in.write(j.effective_m()));
    }
    List<Double> carried = j.carried();
    if (carried != null) {
      text.line(
          "Carried",
          String.format(
              Locale.ROOT, "%.0f %%, %.0f %%, %.0f %% of the approach speed after each contact",
              100 * carried.get(0), 100 * carried.get(1), 100 * carried.get(2)));
    }
  }
}
