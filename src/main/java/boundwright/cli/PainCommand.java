package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.load.LegCare.Pain;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Keeps a pain, or says next morning whether it settled; without either, what is kept. */
@Command(
    name = "pain",
    description = {
      "Keeps a pain of an athlete, a number and a body area; says next morning whether it settled; or lists what is kept.",
      "A sign to stop and refer opens a medical hold, which only a named clinician ends. No diagnosis belongs here.",
      "Example: boundwright pain --athlete NAME --area \"left shin\" --level 3%n"
    })
final class PainCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private WhoseOption whose = new WhoseOption();

  @Option(names = "--area", paramLabel = "WHERE", description = "Body area, 1 to 40 characters.")
  private @Nullable String area;

  @Option(names = "--level", paramLabel = "N", description = "0 (none) to 10 (worst there is).")
  private @Nullable Integer level;

  @Option(names = "--date", paramLabel = "DAY", description = "The day it was felt, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Option(
      names = "--refer",
      description = {
        "A sign to stop and refer was there: pain on one bony spot, at night, at rest or climbing in the session;",
        "swelling, giving way, a pop; cannot hop on the leg."
      })
  private boolean refer;

  @Option(names = "--settled", paramLabel = "yes|no", description = "Whether it had settled by next morning.")
  private @Nullable String settled;

  @Option(names = "--id", paramLabel = "N", description = "With --settled: the number of a pain that is kept.")
  private @Nullable Long id;

  PainCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      Athlete who = whose.in(bench);
      Boolean morning = settled();
      if (id != null) {
        if (morning == null || area != null || level != null) {
          throw new RefusedException("--id names a pain that is kept and goes with --settled yes or no only. Nothing was changed.");
        }
        bench.care().setSettled(who.id(), id, morning);
      } else if (area != null && level != null) {
        bench.care().addPain(who.id(), new Pain(0, Choices.day(date, s), area, level, morning, refer));
      } else if (area != null || level != null || morning != null || refer || date != null) {
        throw new RefusedException("A pain needs its area and its level: --area \"left shin\" --level 3. Nothing was kept.");
      }
      CareAnswer answer = CareAnswer.of(bench, who, s.today());
      if (top.json()) {
        Json.print(s.out(), answer);
      } else {
        print(s.out(), answer);
      }
      return 0;
    }
  }

  private void print(PrintWriter out, CareAnswer answer) {
    if (refer) {
      out.println("Stop and refer to licensed medical staff. A medical hold is open; a coach cannot lift it.");
    }
    answer.print(out);
  }

  private @Nullable Boolean settled() {
    String said = settled;
    if (said == null) {
      return null;
    }
    return switch (said.strip().toLowerCase(Locale.ROOT)) {
      case "yes" -> true;
      case "no" -> false;
      default -> throw new RefusedException("--settled '" + said + "' is not known. Say yes or no, or leave it out until next morning.");
    };
  }
}
