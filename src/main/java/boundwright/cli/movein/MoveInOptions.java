package boundwright.cli.movein;

import boundwright.cli.Choices;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.movein.Columns;
import boundwright.store.movein.Encoding;
import boundwright.store.movein.Kind;
import boundwright.store.movein.Look;
import boundwright.store.movein.MoveIn;
import boundwright.store.movein.RowLook;
import boundwright.store.movein.Separator;
import boundwright.store.movein.Sheet;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What {@code import} takes for a file in columns of the coach's own. */
public final class MoveInOptions {
  private static final int MOST_SHOWN = 50;

  @Option(names = "--as", paramLabel = "KIND", description = "The file is in columns of your own: roster, reps or results (of past meets).")
  private @Nullable String as;

  @Option(
      names = "--map",
      paramLabel = "MAP",
      description =
          "With --as, which column is what: \"name=Athlete,born=3,days=day-first,unit=m\", a column by name or by number from 1. Default: as for the last such file, or by the columns' names.")
  private @Nullable String map;

  @Option(names = "--letters", paramLabel = "NAME", description = "With --as, how letters are written: UTF-8, UTF-16, Latin-1. Default: recognised.")
  private @Nullable String letters;

  @Option(names = "--separated-by", paramLabel = "NAME", description = "With --as: commas, semicolons or tabs. Default: recognised.")
  private @Nullable String separatedBy;

  @Option(names = "--dry-run", description = "With --as: say what each row becomes and take nothing.")
  private boolean dryRun;

  /** What {@code import --as --json} prints; field by field in {@code docs/formats-json.md}. */
  public record Answer(String readAs, String kind, String map, boolean askDays, int taken, long number, List<RowAnswer> rows) {}

  /** What a row becomes. */
  public record RowAnswer(int line, String state, String told) {}

  /**
   * Whether the file is in columns of the coach's own.
   *
   * @throws RefusedException if an option is there that needs that
   */
  public boolean asked() {
    if (as == null && (map != null || letters != null || separatedBy != null || dryRun)) {
      throw new RefusedException("--map, --letters, --separated-by and --dry-run go with --as roster, --as reps or --as results. Nothing was taken.");
    }
    return as != null;
  }

  /** Reads the file before the data folder is opened, so that a mistyped name makes none. */
  public Sheet sheet(Path file) {
    try {
      return Sheet.read(
          Files.readAllBytes(file),
          letters == null ? null : Choices.choice("writing of letters", letters, List.of(Encoding.values()), Encoding::label),
          separatedBy == null ? null : Choices.choice("separator", separatedBy, List.of(Separator.values()), Separator::label));
    } catch (NoSuchFileException e) {
      throw new RefusedException("There is no file " + file + ". Check the name and the folder.", e);
    } catch (IOException e) {
      throw new RefusedException("The file " + file + " cannot be read: " + e.getMessage() + ". Check that it is a file and that you may read it.", e);
    }
  }

  /**
   * Shows or takes the file.
   *
   * @return whether something was taken, or could be
   */
  public boolean run(Workbench bench, Sheet sheet, MoveIn.Order order, Surroundings s, boolean json) {
    MoveIn moveIn = new MoveIn(bench);
    Kind kind = Choices.choice("kind of file", String.valueOf(as), List.of(Kind.values()), Kind::key);
    Columns columns = map == null ? moveIn.columns(kind, sheet) : Columns.read(kind, map, sheet.header(), bench.settings().settings().unit());
    MoveIn.Result result = dryRun ? new MoveIn.Result(0, moveIn.look(sheet, columns), 0) : moveIn.take(sheet, columns, order);
    Look look = result.look();
    if (json) {
      Json.print(
          s.out(),
          new Answer(
              sheet.readAs(), kind.key(), look.columns().text(), look.ask(), result.taken(), result.number(),
              look.rows().stream().map(r -> new RowAnswer(r.line(), r.state().label(), r.told())).toList()));
    } else {
      print(s.out(), s.err(), order, sheet, result);
    }
    return dryRun ? look.takes() > 0 : result.taken() > 0;
  }

  private void print(PrintWriter out, PrintWriter err, MoveIn.Order order, Sheet sheet, MoveIn.Result result) {
    Look look = result.look();
    out.println(order.name() + ": " + sheet.readAs() + ".");
    out.println("Columns: --map \"" + look.columns().text() + "\"");
    if (look.ask()) {
      out.println("Its days can be read in two ways: add days=day-first or days=month-first to --map.");
    }
    if (dryRun) {
      look.rows().stream().filter(r -> r.state() != RowLook.State.BAD).limit(MOST_SHOWN).forEach(r -> out.println("  line " + r.line() + ", " + r.state().label() + ": " + r.told()));
      out.println("Nothing was taken; " + Notes.counted(look.takes(), "row") + " would be.");
    } else {
      out.println(
          result.taken() == 0
              ? "Nothing was taken."
              : Notes.counted(result.taken(), "row") + " taken. To take all of this back: boundwright import --take-back " + result.number() + ".");
    }
    List<RowLook> bad = look.in(RowLook.State.BAD);
    out.flush();
    if (!bad.isEmpty()) {
      err.println(bad.size() == 1 ? "One row cannot be taken:" : bad.size() + " rows cannot be taken:");
      bad.stream().limit(MOST_SHOWN).forEach(r -> err.println("  line " + r.line() + ": " + r.told()));
      if (bad.size() > MOST_SHOWN) {
        err.println("  ... and " + (bad.size() - MOST_SHOWN) + " more; --json lists all.");
      }
      if (!order.skipBadRows()) {
        err.println("Correct the file, or add --skip-bad-rows to take the other rows.");
      }
    }
  }
}
