package boundwright.cli;

import boundwright.store.Workbench;
import boundwright.store.club.Clubs;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Reads films without a page. */
@Command(
    name = "work",
    description = {
      "Reads clips and cuts films of sessions that wait, of every club, one at a time, and opens no page; Ctrl-C closes it.",
      "With a PostgreSQL and a shared data folder: on as many machines as there are, beside those that serve --no-films.%n"
    })
final class WorkCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  WorkCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() throws Exception {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s);
        Clubs clubs = new Clubs(bench, false)) {
      clubs.readFilms(s::trouble);
      s.out().println("Films of " + data.place(s) + " are read here. Ctrl-C closes it.");
      s.out().flush();
      s.until().finished("");
    }
    return 0;
  }
}
