package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Sex;
import boundwright.meet.Entrant;
import boundwright.meet.MeetSheet;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Puts somebody on the list of a meet. */
@Command(name = "enter", description = "Puts an athlete of the squad, or a rival under a label, at the end of the list; in the order drawn.%n")
final class MeetEnterCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private MeetOptions options = new MeetOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "An athlete of the squad; any case.")
  private @Nullable String athlete;

  @Option(names = "--rival", paramLabel = "LABEL", description = "Somebody else, under a label such as a bib number.")
  private @Nullable String rival;

  MeetEnterCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = options.open(s)) {
      MeetSheet sheet = options.sheet(bench, s.today());
      Entrant who = entrant(bench);
      bench.meets().enter(sheet.id(), who);
      MeetAttemptCommand.answer(top, bench, options.unit(bench), sheet.id(), null, null);
      if (!top.json()) {
        asked(s, bench, sheet, who);
      }
      return 0;
    }
  }

  /** The competition sets the board, so one of the other sex is asked about; entered they are. */
  private void asked(Surroundings s, Workbench bench, MeetSheet sheet, Entrant who) {
    Long athleteId = who.athleteId();
    Sex sex = athleteId == null ? null : bench.people().person(athleteId).sex();
    if (sex != null && sheet.isForOthers(sex)) {
      s.out().println(
          who.name() + " is " + sex.label() + ", and this meet is for " + sheet.competition() + ", board to sand " + options.unit(bench).write(sheet.board_m())
              + ". Is that meant? The board is set with the meet: boundwright meet new --for.");
    }
  }

  private Entrant entrant(Workbench bench) {
    if (athlete != null && rival == null) {
      Athlete who = DataOptions.athlete(bench, athlete);
      return new Entrant(0, who.id(), who.name());
    }
    if (rival != null && athlete == null) {
      return Entrant.rival(rival);
    }
    throw new RefusedException("Say who: --athlete NAME of the squad, or --rival LABEL, one of the two.");
  }
}
