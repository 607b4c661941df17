package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.clip.desk.Lessons;
import boundwright.clip.learn.Label;
import boundwright.clip.learn.Taught;
import boundwright.quantity.Notes;
import boundwright.store.Workbench;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists the clips whose contacts were agreed to. */
@Command(
    name = "labels",
    description = {
      "Lists the clips whose contacts you agreed to, and which weights read clips now. Nothing is changed.",
      "Example: boundwright clip labels%n"
    })
final class ClipLabelsCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  ClipLabelsCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      Lessons lessons = bench.clips().lessons();
      List<Lessons.Line> all = lessons.all();
      if (top.json()) {
        Json.print(s.out(), LearnAnswer.labels(all, lessons));
        return 0;
      }
      for (Lessons.Line line : all) {
        String name = bench.athletes().byId(line.clip().athleteId()).map(Athlete::name).orElse("athlete no longer kept");
        Label l = line.label();
        s.out().println(
            "clip " + line.clip().id() + "  " + name + ", " + line.clip().date() + "  "
                + (l == null ? line.trouble() : Notes.counted(l.touchdowns(), "touchdown") + ", " + (l.putRight() ? "put right by hand" : "accepted as read")));
      }
      int right = (int) all.stream().map(Lessons.Line::label).filter(l -> l != null && l.putRight()).count();
      s.out().println(Notes.counted(all.size(), "clip") + ", " + right + " put right by hand.");
      s.out().println(LearnText.inUse(lessons));
      lessons.candidate().map(Taught::day).ifPresent(d -> s.out().println("Learned on " + d + " and not taken yet: boundwright clip learn --take"));
    }
    return 0;
  }
}
