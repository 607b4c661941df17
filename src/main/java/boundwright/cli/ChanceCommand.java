package boundwright.cli;

import boundwright.approach.full.FullRunAnswer;
import boundwright.approach.full.FullRunDesk;
import boundwright.athlete.Athlete;
import boundwright.meet.chance.ChanceAnswer;
import boundwright.meet.chance.LikelyWind;
import boundwright.meet.chance.MeetAhead;
import boundwright.meet.chance.StandardChance;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How likely an athlete is to reach a standard by a day. */
@Command(
    name = "chance",
    description = {
      "How likely an athlete is to reach a standard of the triple jump by a day: meet by meet, with fouls, and with the wind in",
      "which a mark does not count. The meets are those that are kept with the athlete on the list, and those that you name.",
      "Example: boundwright chance --athlete NAME --standard 13.50 --by 2026-07-12 --meet 2026-06-06 --meet 2026-06-28x6%n"
    })
final class ChanceCommand implements Callable<Integer> {
  private static final int FIRST_ROUNDS = 3;

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private WhoseOption whose = new WhoseOption();

  @Option(names = "--event", paramLabel = "EVENT", description = "triple-jump; of the long jump nothing is told here.")
  private @Nullable String event;

  @Option(names = "--standard", required = true, paramLabel = "LENGTH", description = "The distance that is asked for.")
  private String standard = "";

  @Option(names = "--by", required = true, paramLabel = "DAY", description = "The last day, as 2026-07-12.")
  private String by = "";

  @Option(names = "--meet", paramLabel = "DAY[xN]", description = "Day of a further meet with N attempts (without xN: 3); can be repeated.")
  private List<String> meets = new ArrayList<>();

  @Option(names = "--steps", paramLabel = "N", description = "Approach steps of the full run. Default: the athlete's own.")
  private @Nullable Integer steps;

  @Option(names = "--usual-wind", paramLabel = "M/S", description = "Usual wind along the runway [m/s], + from behind. Default: 0.")
  private double wind = LikelyWind.USUAL.mean();

  @Option(names = "--wind-spread", paramLabel = "M/S", description = "How much meets differ from that [m/s]. Default: 1.3.")
  private double spread = LikelyWind.USUAL.meetSd();

  @Option(names = "--gusts", paramLabel = "M/S", description = "How much attempts of a meet differ [m/s]. Default: 0.8.")
  private double gusts = LikelyWind.USUAL.gustSd();

  @Option(names = "--indoors", description = "No wind is counted.")
  private boolean indoors;

  @Mixin private UnitOption unit = new UnitOption();

  ChanceCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    FullRunDesk.only(Choices.event(event));
    try (Workbench bench = data.open(s)) {
      LengthUnit in = unit.in(bench);
      Athlete who = whose.in(bench);
      List<MeetAhead> told = new ArrayList<>();
      for (String m : meets) {
        told.add(meet(m, s));
      }
      LocalDate last = Choices.anyDay(by, s);
      FullRunAnswer jumps = bench.fullRunDesk().answer(who, steps, s.today());
      ChanceAnswer a =
          bench
              .chanceDesk()
              .answer(who, jumps, in.read("standard", standard), last, told, indoors ? null : new LikelyWind(wind, spread, gusts), s.today());
      if (top.json()) {
        Json.print(s.out(), Answer.of(who.name(), a));
      } else {
        print(s, a, in);
      }
      return 0;
    }
  }

  private static MeetAhead meet(String written, Surroundings s) {
    String[] parts = written.strip().toLowerCase(Locale.ROOT).split("x", 2);
    try {
      return new MeetAhead("", Choices.anyDay(parts[0], s), parts.length == 1 ? FIRST_ROUNDS : Integer.parseInt(parts[1].strip()));
    } catch (NumberFormatException e) {
      throw new RefusedException("The meet '" + written + "' is no day with attempts. Write it as 2026-06-06, or 2026-06-06x6 for six attempts.", e);
    }
  }

  private static void print(Surroundings s, ChanceAnswer a, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    text.wrapped("CHANCE", a.words(in));
    StandardChance c = a.chance();
    if (c == null) {
      return;
    }
    s.out().println();
    s.out().println(String.format(Locale.ROOT, "  %-12s%-10s%18s%20s", "Meet", "attempts", "at this one", "by then"));
    for (StandardChance.AtMeet m : c.meets()) {
      s.out()
          .println(
              String.format(
                  Locale.ROOT, "  %-12s%-10d%18s%20s  %s", m.meet().date(), m.meet().attempts(), ChanceAnswer.inHundred(m.here()), ChanceAnswer.inHundred(m.byThen()),
                  m.meet().name()).stripTrailing());
    }
    s.out().println();
    if (a.wind() != null) {
      text.wrapped("Wind", ChanceAnswer.inHundred(c.anyWind()) + " if the wind did not matter.");
    }
    text.wrapped("From", a.from());
    text.wrapped("How sure", c.futures() + " simulated futures: a chance of a half is told to within 1 in 100.");
  }

  /** What {@code chance --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(
      String athlete,
      double standard_m,
      String by,
      @Nullable Double chance,
      @Nullable Double chanceInAnyWind,
      List<Meet> meets,
      double foulChance,
      boolean foulsOwn,
      @Nullable Wind wind,
      @Nullable Integer futures,
      int steps,
      FullRunJson.@Nullable Forecast fullRun,
      @Nullable String cannotTell,
      String said,
      String from) {
    static Answer of(String athlete, ChanceAnswer a) {
      StandardChance c = a.chance();
      LikelyWind w = a.wind();
      return new Answer(
          athlete,
          Json.length(a.standard_m()),
          a.by().toString(),
          c == null ? null : (Double) Json.chance(c.byThen()),
          c == null ? null : (Double) Json.chance(c.anyWind()),
          c == null
              ? List.of()
              : c.meets().stream()
                  .map(m -> new Meet(m.meet().name(), m.meet().date().toString(), m.meet().attempts(), Json.chance(m.here()), Json.chance(m.byThen())))
                  .toList(),
          Json.chance(a.fouls()),
          a.foulsOwn(),
          w == null ? null : new Wind(w.mean(), w.meetSd(), w.gustSd()),
          c == null ? null : (Integer) c.futures(),
          a.fullRun().steps(),
          FullRunJson.Forecast.orNull(a.fullRun().asked()),
          a.missing(),
          a.words(LengthUnit.METRES),
          a.from());
    }
  }

  /** One meet. */
  record Meet(String name, String date, int attempts, double here, double byThen) {}

  /** How winds were taken. */
  record Wind(double usual_mps, double betweenMeets_mps, double gusts_mps) {}
}
