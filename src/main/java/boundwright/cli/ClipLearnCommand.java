package boundwright.cli;

import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Standing;
import boundwright.clip.desk.Lessons;
import boundwright.clip.learn.Comparison.Verdict;
import boundwright.clip.learn.Taught;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Teaches the contact network by the clips whose contacts were agreed to. */
@Command(
    name = "learn",
    description = {
      "Teaches this machine's reading by the clips whose contacts you put right and agreed to, and says whether it reads better on",
      "clips set aside. It takes minutes, can be stopped at any time (Ctrl-C), and nothing leaves this machine. Clips are read",
      "as before until you take what was learned.",
      "Example: boundwright clip learn, then boundwright clip learn --take%n"
    })
final class ClipLearnCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--seed", paramLabel = "N", description = "Of everything drawn; the same clips and seed give the same weights. Default: 1.")
  private long seed = 1;

  @Option(names = "--take", description = "Read with what was learned from now on. Clips that you have put right already read as before.")
  private boolean take;

  @Option(names = "--forget", description = "Go back to what came with the program.")
  private boolean forget;

  ClipLearnCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() throws InterruptedException {
    if (take && forget) {
      throw new RefusedException("Taking and forgetting at once is not possible. Give one of --take and --forget.");
    }
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      Lessons lessons = bench.clips().lessons();
      if (take) {
        Taught taken = lessons.take();
        say(s, "Clips are read with what was learned from " + Notes.counted(taken.clips().size(), "clip") + ", from now on. Back: boundwright clip learn --forget", lessons);
      } else if (forget) {
        boolean any = lessons.forget();
        say(s, any ? "Clips are read with what came with the program again." : "There was nothing to forget.", lessons);
      } else {
        learn(s, bench, lessons);
      }
    }
    return 0;
  }

  private void say(Surroundings s, String sentence, Lessons lessons) {
    if (top.json()) {
      Json.print(s.out(), LearnAnswer.labels(lessons.all(), lessons));
    } else {
      s.out().println(sentence);
    }
  }

  private void learn(Surroundings s, Workbench bench, Lessons lessons) throws InterruptedException {
    Map<Long, Standing> said = bench.people().standings(Scope.FILM);
    int[] twentieths = {-1};
    Lessons.Outcome out =
        lessons.learn(
            seed,
            id -> said.getOrDefault(id, Standing.NOT_ASKED).may(),
            (what, share) -> {
              int now = (int) (share * 20);
              if (now > twentieths[0]) {
                twentieths[0] = now;
                s.err().println(5 * now + " %  " + what);
                s.err().flush();
              }
            });
    if (top.json()) {
      Json.print(s.out(), LearnAnswer.of(out));
      return;
    }
    LearnText.lines(out).forEach(s.out()::println);
    if (out.taught().comparison().verdict() != Verdict.WORSE) {
      s.out().println("To read with it from now on: boundwright clip learn --take");
    }
  }
}
