package boundwright.cli;

import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.meet.BoardDistance;
import boundwright.meet.Combined;
import boundwright.meet.CombinedWind;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Begins a meet. */
@Command(name = "new", description = "Begins a meet. Rules that are not given are those of the settings.%n")
final class MeetNewCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--name", required = true, paramLabel = "NAME", description = "What you call it.")
  private String name = "";

  @Option(names = "--date", paramLabel = "DAY", description = "Its day, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Option(
      names = "--for",
      paramLabel = "WHOM",
      description = {
        "Sets the board: \"men, international\" (13 m), \"women, international\" (11 m), \"youth and club, 9 m\",",
        "\"youth and club, 7 m\", \"long jump, 1 m\" (2 m, 3 m), or your own words with --board.",
        "Default: youth and club, 9 m; of a long jump: long jump, 1 m."
      })
  private @Nullable String whom;

  @Option(names = "--event", paramLabel = "EVENT", description = "triple-jump or long-jump. Default: triple-jump.")
  private @Nullable String event;

  @Option(
      names = "--combined",
      paramLabel = "WHICH",
      description = "The long jump of a decathlon or heptathlon: its points, three attempts for everybody (or --rounds), no later rounds.")
  private @Nullable String combined;

  @Option(
      names = "--wind-rule",
      paramLabel = "RULE",
      description = "Of a combined event: average (of its measured events, up to +2.0), or older (or none above +4.0). Default: average.")
  private @Nullable String windRule;

  @Option(names = "--board", paramLabel = "LENGTH", description = "Take-off line to sand, when it is another.")
  private @Nullable String board;

  @Option(names = "--points", paramLabel = "TABLE", description = "Points by the formula for men or women. Default: none.")
  private @Nullable String points;

  @Option(names = "--rounds", paramLabel = "N", description = "Rounds in all, 1 to 6.")
  private @Nullable Integer rounds;

  @Option(names = "--first-rounds", paramLabel = "N", description = "Rounds that everybody jumps.")
  private @Nullable Integer firstRounds;

  @Option(names = "--finalists", paramLabel = "N", description = "How many go on after the first rounds.")
  private @Nullable Integer finalists;

  @Option(names = "--order", paramLabel = "ORDER", description = "Of the later rounds: as drawn; worst first once, twice or always.")
  private @Nullable String order;

  @Option(names = "--measure", paramLabel = "RULE", description = "Distances are rounded down to the centimetre or quarter inch.")
  private @Nullable String measure;

  @Mixin private UnitOption unit = new UnitOption();

  MeetNewCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      LengthUnit in = unit.in(bench);
      MeetSheet meet = MeetSheet.of(name, Choices.anyDay(date, s), board(in), scoring(), rules(bench.meets().settings().rules()));
      MeetSheet kept = bench.meets().add(meet);
      if (top.json()) {
        Json.print(s.out(), MeetJson.Head.of(kept));
      } else {
        new MeetText(s.out(), in).now(bench.meetDesk().now(kept));
      }
      return 0;
    }
  }

  private BoardDistance board(LengthUnit in) {
    String usual = event() == Event.LONG_JUMP ? "long jump, 1 m" : "youth and club, 9 m";
    String asked = whom == null ? usual : whom;
    if (board != null) {
      return BoardDistance.own(event(), whom == null ? "own board" : whom, in.read("board to sand", board));
    }
    return Choices.choice("competition", asked, BoardDistance.of(event()), BoardDistance::label);
  }

  private @Nullable Scoring scoring() {
    Combined part = combined();
    if (part != null) {
      if (points != null) {
        throw new RefusedException("A combined event has its own points: leave --points out.");
      }
      return Scoring.of(part.table());
    }
    return points == null
        ? null
        : Choices.choice(
            "table of points",
            points,
            Scoring.of(event()).stream().filter(t -> t.combined() == null).toList(),
            t -> t.label().endsWith("women") ? "women" : "men");
  }

  private Event event() {
    return event == null && combined != null ? Event.LONG_JUMP : Choices.event(event);
  }

  private @Nullable Combined combined() {
    if (combined == null) {
      if (windRule != null) {
        throw new RefusedException("--wind-rule belongs to a combined event: give --combined decathlon or heptathlon.");
      }
      return null;
    }
    if (event() != Event.LONG_JUMP) {
      throw new RefusedException("The " + event().label() + " is not part of a " + combined + ". Leave --event out, or --combined.");
    }
    return new Combined(
        Choices.choice("combined event", combined, List.of(CombinedTable.values()), CombinedTable::label),
        windRule == null
            ? CombinedWind.AVERAGE
            : Choices.choice("wind rule", windRule, List.of(CombinedWind.values()), r -> r == CombinedWind.AVERAGE ? "average" : "older"));
  }

  private MeetRules rules(MeetRules kept) {
    Combined part = combined();
    MeasureRule rule = measure == null ? kept.measure() : choice("rule of measuring", measure, List.of(MeasureRule.values()));
    if (part != null) {
      if (firstRounds != null || finalists != null || order != null) {
        throw new RefusedException(
            "In a combined event everybody has the same attempts and nobody is left out: --first-rounds, --finalists and --order do not apply.");
      }
      int attempts = rounds == null ? MeetRules.COMBINED_ROUNDS : rounds;
      return new MeetRules(Event.LONG_JUMP, part, attempts, attempts, kept.finalists(), MeetRules.FinalOrder.AS_DRAWN, rule, kept.trialSeconds());
    }
    return new MeetRules(
        event(),
        null,
        firstRounds == null ? kept.firstRounds() : firstRounds,
        rounds == null ? kept.rounds() : rounds,
        finalists == null ? kept.finalists() : finalists,
        order == null ? kept.order() : choice("order", order, List.of(MeetRules.FinalOrder.values())),
        rule,
        kept.trialSeconds());
  }

  private static <E extends Enum<E>> E choice(String what, String written, List<E> all) {
    Function<E, String> label = e -> e.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    return Choices.choice(what, written, all, label);
  }
}
