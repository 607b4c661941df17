package boundwright.cli;

import boundwright.cli.backup.EverythingFile;
import boundwright.cli.movein.MoveInOptions;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.RepCsv.Problem;
import boundwright.store.RepCsv;
import boundwright.store.RepImport;
import boundwright.store.Workbench;
import boundwright.store.backup.Restore;
import boundwright.store.movein.MoveIn;
import boundwright.store.movein.Sheet;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes reps from a file: all of it, or nothing, or all but the bad rows. */
@Command(
    name = "import",
    description = {
      "Takes reps from a CSV file (UTF-8). An unknown athlete is made; a rep that is there already is not doubled.",
      "If any row is bad nothing is taken, unless --skip-bad-rows. With --as a file in columns of your own: docs/moving-in.md.",
      "Columns: date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,",
      "outcome,mark_to_sand_m; see docs/formats.md. Exit code 1 when nothing was taken.%n"
    })
final class ImportCommand implements Callable<Integer> {
  private static final int NOTHING_TAKEN = 1;
  private static final int MOST_SHOWN = 50;

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private MoveInOptions own = new MoveInOptions();

  @Parameters(paramLabel = "FILE.csv", arity = "0..1", description = "The file of reps.")
  private String file = "";

  @Option(names = "--skip-bad-rows", description = "Take the good rows and report the bad ones.")
  private boolean skipBadRows;

  @Option(names = "--later", description = "Take rows that are dated after today too. Without it they are named and left out.")
  private boolean later;

  @Option(names = "--take-back", paramLabel = "N", description = "Take an import back whole, by the number that it was told with.")
  private long takeBack;

  @Option(names = "--everything", description = "The file is of export --everything: all of it into a folder without athletes.")
  private boolean everything;

  ImportCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code import --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(int taken, int newAthletes, List<ProblemAnswer> problems, List<Integer> there, List<Integer> later, long number) {}

  /** What {@code import --take-back --json} prints. */
  record BackAnswer(long number, String back) {}

  /** A row that cannot be taken. */
  record ProblemAnswer(int line, String why) {}

  @Override
  public Integer call() throws IOException {
    Surroundings s = top.surroundings();
    if (takeBack != 0) {
      return takeBack(s);
    }
    if (file.isEmpty()) {
      throw new RefusedException("No file was named. Give one: boundwright import FILE.csv.");
    }
    if (everything) {
      return everything(s);
    }
    if (own.asked()) {
      return own(s);
    }
    // The file is opened first, so that a mistyped name makes no data folder.
    RepCsv.open(s.path(file)).close();
    try (Workbench bench = data.openOrMake(s)) {
      RepImport.Result result = new RepImport(bench).take(() -> RepCsv.open(s.path(file)), new RepImport.Order(skipBadRows, later, String.valueOf(s.path(file).getFileName())));
      if (top.json()) {
        Json.print(
            s.out(),
            new Answer(
                result.taken(),
                result.newAthletes(),
                result.problems().stream().map(p -> new ProblemAnswer(p.line(), p.why())).toList(),
                result.there(),
                result.later(),
                result.number()));
      } else {
        print(s.out(), s.err(), result);
      }
      return result.taken() == 0 ? NOTHING_TAKEN : 0;
    }
  }

  private int own(Surroundings s) {
    Sheet sheet = own.sheet(s.path(file));
    try (Workbench bench = data.openOrMake(s)) {
      MoveIn.Order order = new MoveIn.Order(skipBadRows, later, String.valueOf(s.path(file).getFileName()));
      return own.run(bench, sheet, order, s, top.json()) ? 0 : NOTHING_TAKEN;
    }
  }

  private int takeBack(Surroundings s) {
    try (Workbench bench = data.open(s)) {
      String back = new MoveIn(bench).takeBack(takeBack);
      if (top.json()) {
        Json.print(s.out(), new BackAnswer(takeBack, back));
      } else {
        s.out().println("Taken back: " + back + ".");
      }
      return 0;
    }
  }

  private int everything(Surroundings s) throws IOException {
    try (Reader text = RepCsv.open(s.path(file))) {
      Restore.Result r = EverythingFile.read(Workbench.restoring(data.folderAlone(s), s.clock()), text);
      if (top.json()) {
        Json.print(s.out(), r.counts().rows());
      } else {
        s.out().println(
            "Everything in " + file + " was taken: " + Notes.counted(r.counts().of("athlete"), "athlete") + ", "
                + Notes.counted(r.counts().of("rep"), "rep") + ". Pair phones again; films are in a backup only.");
      }
      return 0;
    }
  }

  private void print(PrintWriter out, PrintWriter err, RepImport.Result result) {
    out.println(
        result.taken() == 0
            ? "Nothing was taken from " + file + "."
            : Notes.counted(result.taken(), "rep") + " taken from " + file + ", "
                + Notes.counted(result.newAthletes(), "new athlete") + "."
                + (result.newAthletes() == 0 ? "" : " Set the level of each new athlete on the screen: it is not guessed, and until then the lowest limits hold."));
    if (!result.there().isEmpty()) {
      out.println(
          result.there().size() == 1
              ? "1 rep was there already and was not taken again: " + RepCsv.lines(result.there()) + "."
              : result.there().size() + " reps were there already and were not taken again: " + RepCsv.lines(result.there()) + ".");
    }
    if (!result.later().isEmpty()) {
      out.println(
          Notes.counted(result.later().size(), "rep is", "reps are") + " dated after today and left out: " + RepCsv.lines(result.later())
              + ". Is the date right? Then import again with --later.");
    }
    if (result.number() > 0) {
      out.println("To take all of this back: boundwright import --take-back " + result.number() + ".");
    }
    List<Problem> problems = result.problems();
    if (problems.isEmpty()) {
      return;
    }
    out.flush();
    err.println(
        problems.size() == 1
            ? "One row cannot be taken:"
            : problems.size() + " rows cannot be taken:");
    problems.stream().limit(MOST_SHOWN).forEach(p -> err.println("  line " + p.line() + ": " + p.why()));
    if (problems.size() > MOST_SHOWN) {
      err.println("  ... and " + (problems.size() - MOST_SHOWN) + " more; --json lists all.");
    }
    if (!skipBadRows) {
      err.println("Correct the file, or add --skip-bad-rows to take the other rows.");
    }
  }
}
