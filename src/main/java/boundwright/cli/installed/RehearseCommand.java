package boundwright.cli.installed;

import boundwright.cli.BoundwrightCommand;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Makes the archive of loaded classes beside a program that came as one folder; its first start calls this. */
@Command(name = "rehearse", hidden = true, description = "Makes later starts of the program with its own Java quicker.")
public final class RehearseCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  public RehearseCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() throws IOException, InterruptedException {
    Map<String, String> environment = top.surroundings().environment();
    if (!UserPlace.installed(environment)) {
      throw new RefusedException("This is for the program that came as one folder with its own Java; here the launcher does it after each build.");
    }
    return Rehearsal.make(Path.of(environment.getOrDefault(UserPlace.HOME, "")).toAbsolutePath()) ? 0 : 1;
  }
}
