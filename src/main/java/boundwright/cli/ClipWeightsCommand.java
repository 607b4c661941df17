package boundwright.cli;

import boundwright.clip.pose.Weights;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Fetches the networks' weights, for a machine that will have no connection when the first film is read. */
@Command(
    name = "weights",
    description = {
      "Fetches what reads films, once, into a folder; copy that folder to clips/weights of a data folder elsewhere.",
      "Example: boundwright clip weights --to weights%n"
    })
final class ClipWeightsCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Option(names = "--to", paramLabel = "DIR", description = "The folder. Must be given.")
  private @Nullable String to;

  ClipWeightsCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    if (to == null) {
      throw new RefusedException("No folder was named for the weights. Give one with --to DIR.");
    }
    Path folder = top.surroundings().path(to);
    Weights weights = new Weights(folder);
    weights.landmarks(Weights.Size.FULL);
    weights.landmarks(Weights.Size.LITE);
    weights.detector();
    top.surroundings().out().println("The weights are in " + folder + ", each with the sum that it must have.");
    return 0;
  }
}
