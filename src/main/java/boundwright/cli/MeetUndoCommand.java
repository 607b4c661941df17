package boundwright.cli;

import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetSheet;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Takes the last attempt of a meet back. */
@Command(name = "undo", description = "Takes back the attempt that was entered last; what it had replaced comes back.%n")
final class MeetUndoCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private MeetOptions options = new MeetOptions();

  MeetUndoCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = options.open(s)) {
      MeetSheet sheet = options.sheet(bench, s.today());
      KeptAttempt back =
          bench.meets().undo(sheet.id()).orElseThrow(() -> new RefusedException(sheet.name() + " has no attempt to take back."));
      MeetAttemptCommand.answer(top, bench, options.unit(bench), sheet.id(), null, back);
      return 0;
    }
  }
}
