package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.load.LegCare.MedicalHold;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Opens a medical hold, or enters who ended it; without either, what is kept. */
@Command(
    name = "hold",
    description = {
      "Opens a medical hold, or enters the clinician who ended one; or lists what is kept. A coach cannot lift a hold.",
      "Example: boundwright hold --athlete NAME --end 3 --by \"NAME OF THE CLINICIAN\" --on 2026-05-20%n"
    })
final class HoldCommand implements Callable<Integer> {
  private static final String ASKED = "A medical hold ends with its number, the clinician's name and a date: --end 3 --by NAME --on 2026-05-20.";

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private WhoseOption whose = new WhoseOption();

  @Option(names = "--note", paramLabel = "TEXT", description = "Opens a hold: who set it and what the coach was told. No diagnosis.")
  private @Nullable String note;

  @Option(names = "--from", paramLabel = "DAY", description = "With --note: first day, as 2026-05-14. Default: today.")
  private @Nullable String from;

  @Option(names = "--end", paramLabel = "N", description = "Ends the hold with this number, with --by and --on.")
  private @Nullable Long end;

  @Option(names = "--by", paramLabel = "CLINICIAN", description = "The clinician who ends it.")
  private @Nullable String by;

  @Option(names = "--on", paramLabel = "DAY", description = "The day from which the clinician allows bounding. Kept for good.")
  private @Nullable String on;

  @Option(names = "--sure", description = "With --end: the day lies after today and is right.")
  private boolean sure;

  HoldCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      Athlete who = whose.in(bench);
      if (sure && end == null) {
        throw new RefusedException("--sure goes with --end. Nothing was changed.");
      }
      if (note != null && (end != null || by != null || on != null)) {
        throw new RefusedException("Open a hold with --note, or end one with --end, not both at once. Nothing was changed.");
      }
      if (note != null) {
        if (note.isBlank()) {
          throw new RefusedException("The note of a hold is empty. Write who set it, no diagnosis. Nothing was changed.");
        }
        bench.care().openHold(who.id(), new MedicalHold(0, Choices.day(from, s), note, null, null));
      } else if (end != null || by != null || on != null) {
        if (end == null || by == null || on == null) {
          throw new RefusedException(ASKED + " Nothing was changed: the hold lasts.");
        }
        LocalDate day = Choices.anyDay(on, s);
        if (day.isAfter(s.today()) && !sure) {
          throw new RefusedException(
              "The day " + day + " lies after today, " + s.today() + ". The end of a hold is kept for good: a day too early is put right by a new hold, a day too late stands until it"
                  + " comes. If it is the day that " + by.strip() + " named, add --sure. Nothing was changed: the hold lasts.");
        }
        bench.care().endHold(who.id(), end, by, day);
      } else if (from != null) {
        throw new RefusedException("--from goes with --note. Nothing was changed.");
      }
      CareAnswer answer = CareAnswer.of(bench, who, s.today());
      if (top.json()) {
        Json.print(s.out(), answer);
      } else {
        answer.print(s.out());
      }
      return 0;
    }
  }
}
