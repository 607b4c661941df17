package boundwright.cli;

import boundwright.store.Workbench;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Shows how a meet stands. */
@Command(name = "ranks", description = "Ranks, attempts, who jumps next and who goes on, as the marks stand.%n")
final class MeetRanksCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private MeetOptions options = new MeetOptions();

  MeetRanksCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = options.open(s)) {
      MeetAttemptCommand.answer(top, bench, options.unit(bench), options.look(bench, s.today()).id(), null, null);
      return 0;
    }
  }
}
