package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.Reader;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.LongFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Takes a file of reps into the store, whole or not at all: athletes who are not known yet and all reps go in with one
 * transaction.
 */
public final class RepImport {
  /** Rows that are held at once. */
  private static final int AT_ONCE = 20_000;

  private final Workbench workbench;
  private final int atOnce;

  /** Takes files into this store. */
  public RepImport(Workbench workbench) {
    this(workbench, AT_ONCE);
  }

  /** As the other; files of more rows than {@code atOnce} are written as they are read. */
  RepImport(Workbench workbench, int atOnce) {
    this.workbench = workbench;
    this.atOnce = atOnce;
  }

  /**
   * What became of a file.
   *
   * @param taken reps that were taken
   * @param newAthletes athletes who were made
   * @param problems every bad row, in the file's order
   * @param there lines of the good rows that were there already and were not taken again
   * @param later lines of the good rows that are dated after today and wait for the coach's word
   * @param number of the import, by which it can be taken back; 0 if nothing was taken
   */
  public record Result(int taken, int newAthletes, List<RepCsv.Problem> problems, List<Integer> there, List<Integer> later, long number) {
    /** Takes copies. */
    public Result {
      later = List.copyOf(later);
      problems = List.copyOf(problems);
      there = List.copyOf(there);
    }
  }

  /**
   * What a file holds beside what is here.
   *
   * @param rows good rows that are new
   * @param there lines of the good rows that are there already
   * @param problems every bad row
   * @param newAthletes how many athletes the new rows would make
   * @param later lines of the good rows that are dated after today; they are among the others only if that was said
   */
  public record Look(List<RepCsv.Row> rows, List<Integer> there, List<RepCsv.Problem> problems, int newAthletes, List<Integer> later) {
    /** Takes copies. */
    public Look {
      later = List.copyOf(later);
      rows = List.copyOf(rows);
      there = List.copyOf(there);
      problems = List.copyOf(problems);
    }
  }

  /**
   * Reads a file and takes nothing. A row is there already when its athlete has a rep that says the same in every column; equal rows
   * count, so that two equal taps in the file and one here leave one to take.
   *
   * @param in the file; not closed
   */
  public Look look(Reader in) {
    return split(RepCsv.read(in, LocalDate.now(workbench.clock())), id -> workbench.reps().inOrder(id));
  }

  /**
   * What is taken of a file.
   *
   * @param skipBadRows whether the good rows are taken although there are bad ones; without it nothing is taken then. A file
   *     whose columns or quotes are wrong has no good rows.
   * @param later whether rows that are dated after today are meant so
   * @param name what the file is called
   */
  public record Order(boolean skipBadRows, boolean later, String name) {
    /** A file's name may not break paper either. */
    public Order {
      PlainText.checked(name);
    }
  }

  /**
   * What was taken back.
   *
   * @param reps how many
   * @param athletes whom the file had made and of whom nothing else was kept
   */
  public record TakenBack(int reps, int athletes) {}

  /**
   * Takes an import back whole: its reps as if they had never come, and the athletes whom it made, but for those of whom something else is
   * kept by now.
   *
   * @throws RefusedException if nothing of it is here
   */
  public TakenBack takeBack(long number) {
    return new SqlImports(workbench).takeBack(number);
  }

  /**
   * Takes what is new in a file. An athlete is found by name whatever the case; one who is not known is made with the level not set,
   * the first contact of their first row as take-off foot, on the rung of their newest row. The file is read twice and never held: a file of
   * more than {@value #AT_ONCE} rows is written as it is read, and each athlete is learned once afterwards.
   *
   * @param file opens the file, each time from its beginning; closed here
   * @param order what of it is taken
   */
  public Result take(Supplier<Reader> file, Order order) {
    LocalDate last = order.later() ? LocalDate.MAX : LocalDate.now(workbench.clock());
    Map<String, Newcomer> names = new LinkedHashMap<>();
    List<Integer> waiting = new ArrayList<>();
    int[] good = {0};
    RepCsv.Scan scan =
        scan(
            file,
            row -> {
              if (row.rep().date().isAfter(last)) {
                waiting.add(row.line());
              } else {
                good[0]++;
                names.computeIfAbsent(SqlAthletes.key(row.athlete()), key -> new Newcomer(row)).see(row.rep());
              }
            });
    if (!scan.whole()) {
      return new Result(0, 0, scan.problems(), List.of(), List.of(), 0);
    }
    if (good[0] == 0 || (!order.skipBadRows() && !scan.problems().isEmpty())) {
      return new Result(0, 0, scan.problems(), List.of(), waiting, 0);
    }
    Taking taking = new Taking(names, good[0]);
    Result result =
        workbench.reps().write(
            w -> {
              taking.begin(w);
              scan(
                  file,
                  row -> {
                    if (!row.rep().date().isAfter(last)) {
                      taking.row(row);
                    }
                  });
              taking.end();
              long number = taking.count == 0 ? 0 : new SqlImports(workbench).keep(order.name(), taking.numbers(), taking.made);
              return new Result(taking.count, taking.made.size(), scan.problems(), taking.there, waiting, number);
            });
    taking.unlearned.parallelStream().forEach(workbench.logbook()::relearn);
    return result;
  }

  private static RepCsv.Scan scan(Supplier<Reader> file, Consumer<RepCsv.Row> good) {
    try (Reader in = file.get()) {
      return RepCsv.scan(in, good);
    } catch (IOException e) {
      throw new RefusedException("The file could not be read to its end: " + e.getMessage() + ". Nothing was taken. Try again.", e);
    }
  }

  /** The second reading, inside the write. */
  private final class Taking {
    private final Map<String, Newcomer> names;
    private final int expected;
    private final Map<String, Long> ids = new HashMap<>();
    private final Set<Long> made = new LinkedHashSet<>();
    private final List<Integer> there = new ArrayList<>();
    private final List<Rep> batch = new ArrayList<>();
    private final Set<Long> unlearned = new LinkedHashSet<>();
    private @Nullable AlreadyThere kept;
    private RepStore.@Nullable Writer writer;
    private long[] numbers;
    private int seen;
    private int count;

    Taking(Map<String, Newcomer> names, int expected) {
      this.names = names;
      this.expected = expected;
      this.numbers = new long[expected];
    }

    void begin(RepStore.Writer w) {
      writer = w;
      kept = new AlreadyThere(workbench, w::inOrder);
      for (Map.Entry<String, Newcomer> e : names.entrySet()) {
        Athlete known = workbench.athletes().byName(e.getValue().name).orElse(null);
        if (known == null) {
          known = workbench.athletes().add(e.getValue().asAthlete());
          made.add(known.id());
        }
        ids.put(e.getKey(), known.id());
      }
    }

    void row(RepCsv.Row row) {
      seen++;
      Long id = ids.get(SqlAthletes.key(row.athlete()));
      if (id == null || seen > expected) {
        throw changed();
      }
      if (!made.contains(id) && Objects.requireNonNull(kept).matches(row)) {
        there.add(row.line());
        return;
      }
      batch.add(row.rep().of(id));
      if (batch.size() == atOnce && expected > atOnce) {
        flush();
      }
    }

    /** What is too much to be held is written, and learned afterwards. */
    private void flush() {
      RepStore.Writer w = Objects.requireNonNull(writer);
      w.addAll(batch, number -> numbers[count++] = number);
      batch.stream().map(Rep::athleteId).distinct().filter(unlearned::add).forEach(w::forget);
      batch.clear();
    }

    void end() {
      if (seen != expected) {
        throw changed();
      }
      if (!unlearned.isEmpty()) {
        flush();
        return;
      }
      workbench.logbook().logAll(batch).forEach(rep -> numbers[count++] = rep.id());
    }

    long[] numbers() {
      return Arrays.copyOf(numbers, count);
    }

    private RefusedException changed() {
      return new RefusedException("The file changed while it was read. Nothing was taken. Import it again when nobody writes to it.");
    }
  }

  private Look split(RepCsv.Reading reading, LongFunction<List<Rep>> kept) {
    AlreadyThere here = new AlreadyThere(workbench, kept);
    List<RepCsv.Row> rows = new ArrayList<>();
    List<Integer> there = new ArrayList<>();
    for (RepCsv.Row row : reading.rows()) {
      if (here.matches(row)) {
        there.add(row.line());
      } else {
        rows.add(row);
      }
    }
    return new Look(rows, there, reading.problems(), here.unknown(), reading.later().stream().map(RepCsv.Row::line).toList());
  }

  /** What a file tells of somebody who is not known yet. */
  private static final class Newcomer {
    private final String name;
    private final Rep first;
    private Rep newest;

    Newcomer(RepCsv.Row row) {
      this.name = row.athlete();
      this.first = row.rep();
      this.newest = row.rep();
    }

    void see(Rep rep) {
      if (!rep.date().isBefore(newest.date())) {
        newest = rep;
      }
    }

    Athlete asAthlete() {
      return new Athlete(0, name, Level.NOT_SET, first.sequence().contacts().get(0), newest.approachSteps());
    }
  }
}
