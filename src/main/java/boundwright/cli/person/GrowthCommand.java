package boundwright.cli.person;

import boundwright.athlete.Athlete;
import boundwright.athlete.growth.GrowthAnswer;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.GrowthWords;
import boundwright.athlete.growth.Measurement;
import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Choices;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Enters heights, takes wrong ones out, and says how somebody grows; or sets what counts as fast. */
@Command(
    name = "growth",
    description = {
      "Says how fast an athlete grows, how sure that is, and when to measure again; or enters a height, or takes a wrong one out.",
      "Measure without shoes, at the same time of day. It names no talent and makes no diagnosis.",
      "Example: boundwright growth --athlete NAME --height 1.624 --by coach%n"
    })
public final class GrowthCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "Whose; any case.")
  private @Nullable String athlete;

  @Option(names = "--height", paramLabel = "LENGTH", description = "A height: 1.624, 162.4 cm, 5 ft 4 in.")
  private @Nullable String height;

  @Option(names = "--sitting", paramLabel = "LENGTH", description = "Sitting height, seat to crown. May be left out.")
  private @Nullable String sitting;

  @Option(names = "--mass", paramLabel = "KG", description = "Mass in kilograms. May be left out; nothing needs it.")
  private @Nullable Double mass;

  @Option(names = "--date", paramLabel = "DAY", description = "When it was measured, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Option(names = "--by", paramLabel = "WHO", description = "Who measured, as a role: coach, physiotherapist, mother.")
  private String by = "";

  @Option(names = "--another", description = "A second reading that came out as one that is kept.")
  private boolean another;

  @Option(names = "--unit", paramLabel = "UNIT", description = "m or ft. Default: your setting.")
  private @Nullable String unit;

  @Option(names = "--remove", paramLabel = "N", description = "Takes out the measurement with this number.")
  private @Nullable Long remove;

  @Option(names = "--fast", paramLabel = "CM", description = "Everybody's setting: centimetres a year above which limits are lower.")
  private @Nullable Double fast;

  @Option(names = "--unsure", paramLabel = "CM", description = "Everybody's setting: centimetres a year to either side from which it is time to measure.")
  private @Nullable Double unsure;

  @Option(names = "--weeks", paramLabel = "N", description = "Everybody's setting: weeks after which it is time to measure.")
  private @Nullable Integer weeks;

  /** Under this command. */
  public GrowthCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    boolean settings = fast != null || unsure != null || weeks != null;
    String name = athlete;
    if (name == null && !settings) {
      throw new RefusedException("Say whose growth: --athlete NAME. Without it only the settings can be set: --fast, --unsure, --weeks.");
    }
    if (height == null && (sitting != null || mass != null || date != null || !by.isEmpty())) {
      throw new RefusedException("A measurement needs its height: --height 1.624. Nothing was kept.");
    }
    if (name == null && (height != null || remove != null)) {
      throw new RefusedException("Say whose height it is: --athlete NAME. Nothing was changed.");
    }
    try (Workbench bench = data.open(s)) {
      GrowthWords words = new GrowthWords(DataOptions.unit(unit, bench.settings().settings()), LocalDate::toString);
      Athlete who = name == null ? null : DataOptions.athlete(bench, name);
      bench.together(() -> change(bench, who, words, s));
      GrowthAnswer growth = who == null ? null : bench.growth().answer(who.id());
      GrowthJson answer = who == null || growth == null ? GrowthJson.of(bench.growth().settings()) : GrowthJson.of(who, growth);
      if (top.json()) {
        Json.print(s.out(), answer);
      } else {
        answer.print(s.out(), growth, words, s.today());
      }
      return 0;
    }
  }

  private boolean change(Workbench bench, @Nullable Athlete who, GrowthWords words, Surroundings s) {
    GrowthSettings was = bench.growth().settings();
    GrowthSettings now =
        new GrowthSettings(fast == null ? was.fast_cm_y() : fast, unsure == null ? was.unsure_cm_y() : unsure, weeks == null ? was.weeks() : weeks);
    if (!now.equals(was)) {
      bench.growth().keep(now);
    }
    if (who != null && remove != null) {
      bench.growth().remove(who, remove);
    }
    if (who != null && height != null) {
      bench.growth().add(
          who,
          new Measurement(
              0, Choices.anyDay(date, s), words.read("height", height), sitting == null ? null : (Double) words.read("sitting height", sitting), mass, by),
          another);
    }
    return true;
  }
}
