package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import boundwright.season.conflict.Clash;
import boundwright.season.conflict.Conflicts;
import boundwright.season.conflict.Insisted;
import boundwright.season.conflict.Verdict;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says what cannot hold together. */
@Command(
    name = "conflicts",
    description = {
      "Says which rules, meets, places and wishes cannot hold together, none of them left out in vain.",
      "Meets are always insisted on; name what else is.",
      "Example: boundwright season conflicts season.json --must wishes%n"
    })
final class SeasonConflictsCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private SeasonFiles files = new SeasonFiles();

  @Parameters(index = "0", paramLabel = "FILE", description = "The season.")
  private String file = "";

  @Option(
      names = "--must",
      split = ",",
      paramLabel = "WHAT",
      description = "What must be beside the meets: sessions (those wanted of every week), wishes (for single days). Default: both.")
  private @Nullable List<String> must;

  SeasonConflictsCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /**
   * What clashes, in JSON.
   *
   * @param clashes each proven
   * @param more whether there may be more than are told
   * @param undecided for whom neither was found
   * @param together whether a plan that keeps everything was found
   */
  record Told(List<One> clashes, boolean more, List<String> undecided, boolean together) {}

  /**
   * A clash in JSON.
   *
   * @param parts of it
   * @param irreducible whether each part was shown to be needed
   */
  record One(List<Part> parts, boolean irreducible) {}

  /**
   * A part in JSON.
   *
   * @param athlete whose; null for a place
   * @param days on which it holds; of a week, a taper or days away the first and the last
   * @param what it is
   * @param wayOut how it could give way
   */
  record Part(@Nullable String athlete, List<String> days, String what, String wayOut) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    Set<Insisted> insisted = insisted(must);
    return files.with(
        top, file,
        asked -> {
          Conflicts of = new Conflicts(asked.season(), asked.work().climbs(asked.season(), s.today()), asked.done(), insisted);
          Verdict found = of.find();
          if (top.json()) {
            Json.print(s.out(), new Told(found.clashes().stream().map(SeasonConflictsCommand::one).toList(), found.more(), found.undecided(), found.together()));
          } else {
            print(s, found);
          }
          return 0;
        });
  }

  private static Set<Insisted> insisted(@Nullable List<String> words) {
    Set<Insisted> out = EnumSet.noneOf(Insisted.class);
    for (String w : words == null ? List.of("sessions", "wishes") : words) {
      switch (w.strip()) {
        case "sessions" -> out.add(Insisted.SESSIONS);
        case "wishes" -> out.add(Insisted.WISHES);
        default -> throw new RefusedException("'" + w + "' cannot be insisted on. Write sessions, wishes, or both with a comma between.");
      }
    }
    return out;
  }

  private static One one(Clash c) {
    return new One(
        c.parts().stream().map(p -> new Part(p.athlete(), p.days().stream().map(LocalDate::toString).toList(), p.said(), p.wayOut())).toList(), c.unproven() == 0);
  }

  private static void print(Surroundings s, Verdict found) {
    for (Clash c : found.clashes()) {
      String all = c.unproven() == 0 ? "; without any one of them the others can:" : ":";
      s.out().println(c.parts().size() == 1 ? "No day allows:" : "These cannot hold together" + all);
      for (Clash.Part p : c.parts()) {
        String days = p.days().stream().map(LocalDate::toString).collect(Collectors.joining(", "));
        s.out().println("  " + (p.athlete() == null ? "" : p.athlete() + ": ") + p.said() + " (" + days + "). Way out: " + p.wayOut() + ".");
      }
      if (c.unproven() > 0) {
        s.out().println("  Whether all of them are needed is not decided for " + c.unproven() + ".");
      }
    }
    if (found.more()) {
      s.out().println("There may be more: change these and ask again.");
    }
    if (!found.undecided().isEmpty()) {
      s.out().println("Not decided: " + String.join(", ", found.undecided()) + ".");
    }
    if (found.clashes().isEmpty() && found.undecided().isEmpty()) {
      s.out().println(found.together() ? "Nothing clashes." : "Nothing clashes for any athlete alone, nor at the places in any week. For all together it is not decided.");
    }
  }
}
