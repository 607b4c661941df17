package boundwright.cli;

import boundwright.meet.Attempt;
import boundwright.meet.Entrant;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetNow;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Keeps an attempt. */
@Command(
    name = "attempt",
    description = "Keeps an attempt and shows the ranks; one of the same round is replaced, and comes back with undo.%n")
final class MeetAttemptCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private MeetOptions options = new MeetOptions();

  @Option(names = "--who", paramLabel = "NAME", description = "Who jumped, as on the list. Default: who is next.")
  private @Nullable String who;

  @Option(names = "--round", paramLabel = "N", description = "The round. Default: their first without an attempt.")
  private @Nullable Integer round;

  @Option(names = "--distance", paramLabel = "LENGTH", description = "Of a valid attempt, as measured.")
  private @Nullable String distance;

  @Option(names = "--foul", description = "It was a foul.")
  private boolean foul;

  @Option(names = "--pass", description = "It was not taken.")
  private boolean pass;

  @Option(names = "--wind", paramLabel = "M/S", description = "Wind [m/s], tail wind +.")
  private @Nullable Double wind;

  @Option(names = "--gap", paramLabel = "LENGTH", description = "Board gap, + behind the line; of a foul negative.")
  private @Nullable String gap;

  @Option(names = "--shift", paramLabel = "LENGTH", description = "How far the start mark stood from the planned one, + back. Default: 0.")
  private @Nullable String shift;

  @Option(names = "--note", paramLabel = "WORDS", description = "Your words, kept with the attempt.")
  private String note = "";

  MeetAttemptCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = options.open(s)) {
      LengthUnit in = options.unit(bench);
      MeetSheet sheet = options.sheet(bench, s.today());
      Entrant jumper = jumper(bench, sheet);
      int ofRound = round == null ? sheet.nextRound(jumper) : round;
      Double moved = Choices.length(in, "shift of the start mark", shift);
      Attempt attempt =
          new Attempt(
              sheet.event(),
              jumper.name(),
              ofRound,
              result(),
              Choices.length(in, "distance", distance),
              wind,
              Choices.length(in, "board gap", gap),
              moved == null ? 0 : moved);
      KeptAttempt kept = bench.meets().add(sheet.id(), jumper.id(), attempt, note);
      answer(top, bench, in, sheet.id(), kept, null);
      return 0;
    }
  }

  private Entrant jumper(Workbench bench, MeetSheet sheet) {
    if (who != null) {
      return MeetOptions.entrant(sheet, who);
    }
    String next = bench.meetDesk().now(sheet).next();
    if (next == null) {
      throw new RefusedException("Nobody is next in " + sheet.name() + ". Say who jumped with --who NAME.");
    }
    return MeetOptions.entrant(sheet, next);
  }

  private Attempt.Result result() {
    int said = (distance == null ? 0 : 1) + (foul ? 1 : 0) + (pass ? 1 : 0);
    if (said != 1) {
      throw new RefusedException("An attempt has a distance (--distance LENGTH), or is a foul (--foul) or a pass (--pass): one of the three.");
    }
    return foul ? Attempt.Result.FOUL : pass ? Attempt.Result.PASS : Attempt.Result.VALID;
  }

  /** What was entered or taken back, and how the meet stands then. */
  static void answer(
      BoundwrightCommand top, Workbench bench, LengthUnit in, long meetId, @Nullable KeptAttempt kept, @Nullable KeptAttempt back) {
    Surroundings s = top.surroundings();
    MeetNow now = bench.meetDesk().now(meetId);
    if (top.json()) {
      Json.print(s.out(), MeetJson.Now.of(now, kept, back));
      return;
    }
    MeetText text = new MeetText(s.out(), in);
    if (kept != null) {
      text.attempt("Kept", kept, now.sheet().rules().measure());
    }
    if (back != null) {
      text.attempt("Taken back", back, now.sheet().rules().measure());
    }
    text.now(now);
  }
}
