package boundwright.cli;

import boundwright.clip.pose.Weights;
import boundwright.clip.session.CutOrder;
import boundwright.clip.session.CutProcess;
import boundwright.clip.session.Cutter;
import boundwright.clip.session.FilmRep;
import boundwright.quantity.Notes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Cuts the film of a whole session into reps. */
@Command(
    name = "session",
    description = {
      "Cuts the film of a whole session into reps: where somebody runs through, bounds and lands. Nobody is named and nothing",
      "else is read; that is done on the pages, at /clips/session.",
      "Example: boundwright clip session tuesday.mp4%n"
    })
final class ClipSessionCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Parameters(paramLabel = "FILE", description = "The film, as it came from the phone.")
  private String file = "";

  @Option(names = "--stills", paramLabel = "FOLDER", description = "Where the pictures of the reps are written. Default: nowhere.")
  private @Nullable String stills;

  ClipSessionCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() throws InterruptedException {
    Surroundings s = top.surroundings();
    String folder = stills;
    List<FilmRep> reps = new ArrayList<>();
    double[] seconds = new double[1];
    int looks =
        CutProcess.cut(
            new CutOrder(s.path(file), Weights.folder(data.folder(s).resolve("clips")), 0, folder == null ? null : s.path(folder)),
            new Cutter.Listener() {
              @Override
              public void reached(double time_s, double of_s) {
                seconds[0] = of_s;
              }

              @Override
              public void rep(FilmRep rep) {
                reps.add(rep);
              }
            });
    reps.sort(Comparator.comparingDouble(FilmRep::run_s));
    if (top.json()) {
      Json.print(s.out(), SessionAnswer.of(seconds[0], looks, reps));
    } else {
      for (int i = 0; i < reps.size(); i++) {
        s.out().println((i + 1) + "  " + reps.get(i).said());
      }
      s.out().println(Notes.counted(reps.size(), "rep") + ".");
    }
    return 0;
  }
}
