package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.load.DayVerdict;
import boundwright.readiness.Evidence;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.LadderDesk;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** May this athlete add speed, and who needs the coach today? */
@Command(
    name = "ready",
    description = {
      "May this athlete add two steps, with all the evidence; without an athlete, the squad by need.",
      "Example: boundwright ready --athlete NAME%n"
    })
final class ReadyCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "Who; any case. Default: the whole squad.")
  private @Nullable String athlete;

  ReadyCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /**
   * One athlete: the family that decides (go back before add, add before stay, else the combinations), then all of them.
   *
   * @param answer {@code add-two-steps}, {@code stay} or {@code go-back}
   */
  record Answer(
      String athlete,
      String need,
      String guard,
      String family,
      int rung,
      String answer,
      String why,
      List<Item> evidence,
      List<FamilyAnswer> families) {}

  /** The gate's answer for one family of drills. */
  record FamilyAnswer(
      String family, int rung, String answer, String why, int missingReps, int missingDays, List<Item> evidence) {
    static FamilyAnswer of(GateAnswer a) {
      return new FamilyAnswer(
          a.family().label(),
          a.rung(),
          a.decision().key(),
          a.why(),
          a.missingReps(),
          a.missingDays(),
          a.evidence().stream().map(Item::of).toList());
    }
  }

  /** One thing that is asked for. */
  record Item(String name, String value, String needed, boolean met, String state, String source) {
    static Item of(Evidence e) {
      return new Item(e.name().label(), e.value(), e.needed(), e.met(), e.state().label(), e.source().line());
    }
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      List<Athlete> asked = athlete == null ? bench.athletes().all() : List.of(DataOptions.athlete(bench, athlete));
      List<LadderDesk.Line> lines = bench.ladderDesk().squad(asked);
      if (top.json()) {
        List<Answer> answers = lines.stream().map(ReadyCommand::answer).toList();
        Json.print(s.out(), athlete == null ? answers : answers.get(0));
      } else {
        lines.forEach(l -> print(s.out(), l, athlete != null));
      }
      return 0;
    }
  }

  private static Answer answer(LadderDesk.Line line) {
    List<FamilyAnswer> families = line.answers().stream().map(FamilyAnswer::of).toList();
    FamilyAnswer decides = families.get(families.size() - 1);
    for (GateAnswer.Decision d : List.of(GateAnswer.Decision.ADD_TWO_STEPS, GateAnswer.Decision.GO_BACK)) {
      for (FamilyAnswer f : families) {
        decides = f.answer().equals(d.key()) ? f : decides;
      }
    }
    return new Answer(
        line.athlete().name(),
        line.need().label(),
        line.day().answer().label(),
        decides.family(),
        decides.rung(),
        decides.answer(),
        decides.why(),
        decides.evidence(),
        families);
  }

  private static String mark(Evidence e) {
    return switch (e.state()) {
      case THERE -> "+";
      case NOT_THERE -> "-";
      case NOT_KNOWN -> "?";
    };
  }

  private static void print(PrintWriter out, LadderDesk.Line line, boolean whole) {
    DayVerdict day = line.day();
    out.printf("%-24s %s%n", line.athlete().name(), line.need().label());
    out.println("  load: " + (day.held() ? "no bounding. " + day.reason() : day.said() + (day.lead().isEmpty() ? "" : " " + day.lead())));
    for (GateAnswer a : line.answers()) {
      String from = a.rung() == 0 ? "standing" : a.rung() + " steps";
      out.printf("  %-12s %-9s %s. %s%n", a.family().label(), from, a.decision().label(), a.why());
      if (whole) {
        for (Evidence e : a.evidence()) {
          out.printf("    %s %-21s %s; needed: %s. %s%n", mark(e), e.name().label(), e.value(), e.needed(), e.source().line());
        }
      }
    }
  }
}
