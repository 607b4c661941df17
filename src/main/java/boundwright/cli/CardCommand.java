package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.card.CardPdf;
import boundwright.card.Paper;
import boundwright.card.SessionCard;
import boundwright.card.SessionCards;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The session card as a PDF. */
@Command(
    name = "card",
    description = {
      "The session card of an athlete or the squad as a PDF: drills, marks, contacts per leg, room to write.",
      "The drills are the plan of the day, or those given with --sequence.",
      "Example: boundwright card --squad --paper A5 --out thursday.pdf%n"
    })
final class CardCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @ArgGroup(multiplicity = "1")
  private Whose whose = new Whose();

  /** One athlete or all. */
  static final class Whose {
    @Option(names = "--athlete", required = true, paramLabel = "NAME", description = "One athlete; any case.")
    private @Nullable String athlete;

    @Option(names = "--squad", required = true, description = "Everybody who is here.")
    private boolean squad;
  }

  @Option(names = "--paper", paramLabel = "SIZE", description = "A5 or A4. Default: A5.")
  private String paper = "A5";

  @Option(names = "--out", required = true, paramLabel = "FILE.pdf", description = "The file to write.")
  private String out = "";

  @Option(names = "--force", description = "Replace the file if it is there.")
  private boolean force;

  @Option(
      names = "--sequence",
      paramLabel = "FEET",
      description = "A drill in place of the plan of the day; give it again for the next drill.")
  private @Nullable List<String> sequences;

  @Option(names = "--steps", paramLabel = "N", description = "With --sequence: approach steps. Default: each athlete's own.")
  private @Nullable Integer steps;

  @Option(names = "--sets", paramLabel = "N", description = "With --sequence: sets, 1 to 20. Default: 2.")
  private int sets = 2;

  @Option(names = "--reps", paramLabel = "N", description = "With --sequence: reps in a set, 1 to 20. Default: 2.")
  private int reps = 2;

  @Option(names = "--flat", description = "With --sequence: on the flat, not into sand.")
  private boolean flat;

  @Option(
      names = "--day",
      paramLabel = "DAY",
      description = "The plan of this day, and who is here on it, as 2026-05-20. Default: today.")
  private @Nullable String day;

  @Mixin private UnitOption unit = new UnitOption();

  CardCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code card --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(String file, String paper, int bytes, List<String> athletes) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    Paper size = size();
    Path file = s.path(out);
    OutFile.check(file, force);
    try (Workbench bench = data.open(s)) {
      LocalDate today = s.today();
      LocalDate of = Choices.anyDay(day, s);
      CoachSettings settings = Choices.settings(bench.settings().settings(of), unit, null, null);
      List<Athlete> athletes = athletes(bench, of);
      DayPlan plan = plan(bench, of);
      Clock then = Clock.offset(s.clock(), Duration.ofDays(ChronoUnit.DAYS.between(today, of)));
      // a stage of another day is not known today
      Function<Athlete, List<String>> backs = of.equals(today) ? bench.backDesk()::today : athlete -> List.of();
      SessionCard card = new SessionCards(bench.advisor(), bench.loadDesk(), backs, then, bench.looks()::teaching).of(athletes, plan, settings);
      byte[] pdf = new CardPdf().render(card, size);
      OutFile.write(file, pdf, force);
      List<String> names = athletes.stream().map(Athlete::name).toList();
      if (top.json()) {
        Json.print(s.out(), new Answer(file.toString(), size.name(), pdf.length, names));
      } else {
        s.out().println("The card of " + String.join(", ", names) + " is in " + file + " (" + size.name() + ").");
      }
      return 0;
    }
  }

  private Paper size() {
    return switch (paper.strip().toUpperCase(Locale.ROOT)) {
      case "A5" -> Paper.A5;
      case "A4" -> Paper.A4;
      default -> throw new RefusedException("The paper '" + paper + "' is not known. Use A5 or A4.");
    };
  }

  private List<Athlete> athletes(Workbench bench, LocalDate of) {
    String one = whose.athlete;
    if (one != null && !whose.squad) {
      return List.of(DataOptions.athlete(bench, one));
    }
    List<Athlete> all = bench.athletes().all();
    if (all.isEmpty()) {
      throw new RefusedException("The squad has no athletes yet, so there is no card to print. Add them on the screen (boundwright serve).");
    }
    List<Athlete> here = bench.attendance().on(of).here();
    return here.isEmpty() ? all : here;
  }

  private DayPlan plan(Workbench bench, LocalDate of) {
    List<String> given = sequences;
    if (given != null) {
      return new DayPlan("", given.stream().map(text -> new Drill(Sequence.parse(text), steps, sets, reps, !flat)).toList());
    }
    DayPlan kept = bench.settings().plan(of);
    if (kept.drills().isEmpty()) {
      throw new RefusedException(
          "There are no drills for " + of + " yet. Plan the day on the screen (boundwright serve), or name drills here: --sequence \"RRL x2\".");
    }
    return kept;
  }
}
