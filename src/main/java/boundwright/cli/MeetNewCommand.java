package boundwright.cli;

import boundwright.jump.MeasureRule;
import boundwright.meet.BoardDistance;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.quantity.LengthUnit;
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
        "\"youth and club, 7 m\", or your own words with --board. Default: youth and club, 9 m."
      })
  private String whom = "youth and club, 9 m";

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

  @Option(names = "--unit", paramLabel = "UNIT", description = "m, or ft for feet and inches. Default: the settings.")
  private @Nullable String unit;

  MeetNewCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      LengthUnit in = DataOptions.unit(unit, bench.settings().settings());
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
    if (board != null) {
      return BoardDistance.own(whom, in.read("board to sand", board));
    }
    return Choices.choice("competition", whom, BoardDistance.ALL, BoardDistance::label);
  }

  private @Nullable Scoring scoring() {
    return points == null
        ? null
        : Choices.choice(
            "table of points",
            points,
            List.of(Scoring.TRIPLE_JUMP_MEN, Scoring.TRIPLE_JUMP_WOMEN),
            t -> t == Scoring.TRIPLE_JUMP_MEN ? "men" : "women");
  }

  private MeetRules rules(MeetRules kept) {
    return new MeetRules(
        firstRounds == null ? kept.firstRounds() : firstRounds,
        rounds == null ? kept.rounds() : rounds,
        finalists == null ? kept.finalists() : finalists,
        order == null ? kept.order() : choice("order", order, List.of(MeetRules.FinalOrder.values())),
        measure == null ? kept.measure() : choice("rule of measuring", measure, List.of(MeasureRule.values())),
        kept.trialSeconds());
  }

  private static <E extends Enum<E>> E choice(String what, String written, List<E> all) {
    Function<E, String> label = e -> e.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    return Choices.choice(what, written, all, label);
  }
}
