package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.cli.backup.EverythingFile;
import boundwright.store.AthleteFile;
import boundwright.store.RepCsv;
import boundwright.store.Workbench;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes all reps, in the form that {@code import} reads, or everything that is kept of one athlete. */
@Command(
    name = "export",
    description = {
      "Writes all reps as CSV that import reads again, to the terminal or to a file; --json for JSON.",
      "With --athlete and --json: everything that is kept of this athlete, not only the reps, for the athlete who asks.%n"
    })
final class ExportCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", paramLabel = "NAME", description = "One athlete only. Default: all.")
  private @Nullable String athlete;

  @Option(names = "--everything", description = "All that is kept, as JSON that import --everything reads; with --athlete all that is kept of them, for them.")
  private boolean everything;

  @Option(
      names = "--jumps",
      description = "Instead of reps: measured jumps, run-throughs, take-offs at the board and attempts in meets, as JSON.")
  private boolean jumps;

  @Option(names = "--out", paramLabel = "FILE", description = "The file to write. Default: the terminal.")
  private @Nullable String out;

  @Option(names = "--force", description = "Replace the file if it is there.")
  private boolean force;

  ExportCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() throws IOException {
    Surroundings s = top.surroundings();
    Path file = out == null ? null : s.path(out);
    if (file != null) {
      OutFile.check(file, force);
    }
    try (Workbench bench = data.open(s)) {
      List<Athlete> whose = athlete == null ? bench.athletes().all() : List.of(DataOptions.athlete(bench, athlete));
      StringWriter text = new StringWriter();
      if (everything) {
        if (athlete == null) {
          int rows = EverythingFile.write(bench, text);
          deliver(s, file, text, rows + " rows of everything that is kept (no secrets, no films)");
          return 0;
        }
        Everything all = Everything.of(bench, whose.get(0), s.today());
        Json.print(new PrintWriter(text, true), all);
        deliver(s, file, text, "Everything that is kept of " + all.athlete() + " was");
        return 0;
      }
      if (jumps) {
        int count = jumps(bench, whose, new PrintWriter(text));
        deliver(s, file, text, count + (count == 1 ? " athlete" : " athletes"));
        return 0;
      }
      int reps = top.json() ? json(bench, whose, new PrintWriter(text)) : csv(bench, whose, text);
      deliver(s, file, text, reps + (reps == 1 ? " rep" : " reps"));
      return 0;
    }
  }

  /** What {@code export --athlete NAME --everything} prints; described in {@code docs/formats-json.md}. */
  record Everything(String athlete, String written, boolean invented, Map<String, List<Map<String, @Nullable Object>>> kept) {
    static Everything of(Workbench bench, Athlete who, LocalDate today) {
      return new Everything(who.name(), today.toString(), bench.invented(), new AthleteFile(bench).of(who));
    }
  }

  private void deliver(Surroundings s, @Nullable Path file, StringWriter text, String what) {
    if (file == null) {
      s.out().print(text);
    } else {
      OutFile.write(file, text.toString().getBytes(StandardCharsets.UTF_8), force);
      s.out().println(what + " written to " + file + ".");
    }
  }

  private static int jumps(Workbench bench, List<Athlete> whose, PrintWriter text) {
    Json.print(text, whose.stream().map(a -> JumpsAnswer.of(bench, a)).toList());
    text.flush();
    return whose.size();
  }

  private static int json(Workbench bench, List<Athlete> whose, PrintWriter text) {
    List<RepAnswer> all = new ArrayList<>();
    whose.forEach(a -> bench.reps().inOrder(a.id()).forEach(rep -> all.add(RepAnswer.of(a.name(), rep))));
    Json.print(text, all);
    text.flush();
    return all.size();
  }

  private static int csv(Workbench bench, List<Athlete> whose, StringWriter text) {
    List<RepCsv.Row> rows = new ArrayList<>();
    whose.forEach(a -> bench.reps().inOrder(a.id()).forEach(rep -> rows.add(new RepCsv.Row(0, a.name(), rep))));
    RepCsv.write(text, rows);
    return rows.size();
  }
}
