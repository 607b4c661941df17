package boundwright.cli;

import boundwright.approach.full.DistanceEntry;
import boundwright.approach.full.FullRunAnswer;
import boundwright.approach.full.FullRunDesk;
import boundwright.approach.full.FullRunForecast;
import boundwright.athlete.Athlete;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.Comparator;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How far an athlete will jump from more approach steps, and the distances that it rests on. */
@Command(
    name = "full-run",
    description = {
      "How far an athlete will triple-jump from more approach steps, from every distance that the squad has logged; wind and",
      "weather are counted where they are noted. Or what one jump of somebody who is not kept says.",
      "Examples: boundwright full-run --athlete NAME --steps 16",
      "          boundwright full-run --from 8 --distance 13.05 --steps 16",
      "          boundwright full-run --athlete NAME --keep --from 8 --distance 13.05 --wind 1 --wind-by flag%n"
    })
final class FullRunCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "Whose jumps; any case.")
  private @Nullable String athlete;

  @Option(names = "--event", paramLabel = "EVENT", description = "triple-jump; of the long jump nothing is told here.")
  private @Nullable String event;

  @Option(names = "--steps", paramLabel = "N", description = "Approach steps to tell of, 4 to 26. Default: those of the athlete's full run.")
  private @Nullable Integer steps;

  @Option(names = "--from", paramLabel = "N", description = "Approach steps that were jumped from, 4 to 26.")
  private @Nullable Integer from;

  @Option(names = "--distance", paramLabel = "LENGTH", description = "How far.")
  private @Nullable String distance;

  @Option(names = "--keep", description = "Keep the jump: --from and --distance, and its weather.")
  private boolean keep;

  @Mixin private WeatherOptions weather = new WeatherOptions();

  @Mixin private JumpDayOptions when = new JumpDayOptions();

  @Option(names = "--sure", description = "Keep a distance far from what is told without asking.")
  private boolean sure;

  @Option(names = "--undo-last", description = "Take back the distance of this athlete that was kept last.")
  private boolean undoLast;

  @Mixin private UnitOption unit = new UnitOption();

  FullRunCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    FullRunDesk.only(Choices.event(event));
    try (Workbench bench = data.open(s)) {
      LengthUnit in = unit.in(bench);
      if (athlete == null) {
        nobody(s, bench, in);
        return 0;
      }
      Athlete who = DataOptions.athlete(bench, athlete);
      if (undoLast) {
        entry(s, who, undo(bench, who), in);
      } else if (keep) {
        if (from == null || distance == null) {
          throw new RefusedException("A jump is kept with its steps and its distance: --from N --distance LENGTH.");
        }
        entry(s, who, bench.fullRunDesk().keep(who, jump(s, who, from, in.read("distance", distance)), sure, in, s.today()), in);
      } else if (from != null || distance != null || weather.any()) {
        throw new RefusedException("--from, --distance and the weather belong to a jump: add --keep to keep it, or leave --athlete out to ask about it.");
      } else {
        answer(s, who.name(), bench.fullRunDesk().answer(who, steps, s.today()), in);
      }
      return 0;
    }
  }

  private DistanceEntry jump(Surroundings s, Athlete who, int steps, double metres) {
    return new DistanceEntry(0, who.id(), when.day(s), steps, metres, weather.weather(), when.note());
  }

  private void nobody(Surroundings s, Workbench bench, LengthUnit in) {
    if (keep || undoLast) {
      throw new RefusedException("Say whose jump it is with --athlete NAME: distances are kept with their athlete.");
    }
    if (from == null || distance == null || steps == null) {
      throw new RefusedException("Say whose jumps with --athlete NAME, or ask about one jump: --from N --distance LENGTH --steps N.");
    }
    answer(s, null, bench.fullRunDesk().answer(from, in.read("distance", distance), steps, s.today()), in);
  }

  private static DistanceEntry undo(Workbench bench, Athlete who) {
    DistanceEntry last =
        bench.fullRunLog().distances(who.id()).stream()
            .max(Comparator.comparingLong(DistanceEntry::id))
            .orElseThrow(() -> new RefusedException(who.name() + " has no distance to take back that was kept with its steps."));
    return bench.fullRunLog().removeDistance(who.id(), last.id()).orElse(last);
  }

  private void entry(Surroundings s, Athlete who, DistanceEntry e, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), FullRunJson.Entry.of(who.name(), e, undoLast));
      return;
    }
    String weather = e.weather().words();
    new MarksText(s.out(), in)
        .wrapped(
            undoLast ? "Taken back" : "Kept",
            who.name() + ", " + e.date() + ": " + in.write(e.distance_m()) + " from " + e.steps() + " steps" + (weather.isEmpty() ? "." : ", " + weather + "."));
  }

  private void answer(Surroundings s, @Nullable String name, FullRunAnswer a, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), FullRunJson.Answer.of(name, a));
      return;
    }
    MarksText text = new MarksText(s.out(), in);
    text.wrapped("FULL RUN", a.words(in));
    if (a.asked() != null) {
      text.wrapped("Weather", a.weatherWords(in));
      s.out().println();
      s.out().println(String.format(Locale.ROOT, "%-12s%14s  nine times in ten between           one jump between", "Steps", "on average"));
      for (FullRunForecast f : a.curve()) {
        s.out()
            .println(
                String.format(
                    Locale.ROOT, "%-12d%14s  %14s  %14s    %14s  %14s", f.steps(), in.write(f.level_m().p50()), in.write(f.level_m().p05()), in.write(f.level_m().p95()),
                    in.write(f.jump_m().p05()), in.write(f.jump_m().p95())));
      }
      s.out().println();
    }
    if (!a.from().isEmpty()) {
      text.wrapped("From", a.from());
    }
  }
}
