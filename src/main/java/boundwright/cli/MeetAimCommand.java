package boundwright.cli;

import boundwright.meet.MeetAim;
import boundwright.meet.RivalMeaning;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.store.Workbench;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what the next attempt of an athlete is for. */
@Command(name = "aim", description = "What the next attempt of an athlete is for: how far to move the start, where to aim, what the rivals' marks mean.%n")
final class MeetAimCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private MeetOptions options = new MeetOptions();

  @Option(names = "--athlete", required = true, paramLabel = "NAME", description = "An athlete of the squad; any case.")
  private String athlete = "";

  MeetAimCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = options.open(s)) {
      MeetAim aim = bench.meetDesk().aim(options.look(bench, s.today()), DataOptions.athlete(bench, athlete));
      if (top.json()) {
        Json.print(s.out(), MeetJson.Aim.of(aim));
      } else {
        print(s, aim, options.unit(bench));
      }
      return 0;
    }
  }

  private static void print(Surroundings s, MeetAim aim, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    text.wrapped("START", aim.words(in));
    Double best = aim.best_m();
    Double needed = aim.needed_m();
    if (!aim.purpose().isEmpty()) {
      text.line("For", aim.purpose());
    }
    text.line("Left", Notes.counted(aim.attemptsLeft(), "attempt") + ", best so far " + (best == null ? "none" : in.write(best)));
    if (needed != null) {
      text.line("Needed", in.write(needed) + " makes the place nine times in ten");
    }
    text.wrapped("From", aim.answer().from());
    for (RivalMeaning m : aim.rivals()) {
      Double ahead = m.needed_m();
      Double standing = m.rival().best_m();
      s.out()
          .println(
              String.format(
                  Locale.ROOT,
                  "  %-24s%16s  %s%s",
                  m.rival().name(),
                  standing == null ? "no mark" : in.write(standing),
                  ahead == null ? "behind you" : in.write(ahead) + " stands ahead",
                  m.next() == null
                      ? ""
                      : ", chance " + MarksText.chance(m.next().worth()) + (m.next().worthwhile() ? ", aim " + in.write(m.next().aim_m()) : "")));
    }
  }
}
