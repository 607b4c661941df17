package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.io.Reader;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongFunction;

/**
 * Takes a file of reps into the store, whole or not at all: athletes who are not known yet and all reps go in with one
 * transaction.
 */
public final class RepImport {
  private final Workbench workbench;

  /** Takes files into this store. */
  public RepImport(Workbench workbench) {
    this.workbench = workbench;
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
   * A file that was taken and of which something is still here.
   *
   * @param number by which it is taken back
   * @param name what it was called
   * @param at when
   * @param reps how many of its reps are here
   */
  public record Taken(long number, String name, Instant at, int reps) {}

  /**
   * What was taken back.
   *
   * @param reps how many
   * @param athletes whom the file had made and of whom nothing else was kept
   */
  public record TakenBack(int reps, int athletes) {}

  /** The files that were taken, newest first. */
  public List<Taken> taken(int most) {
    return new SqlImports(workbench).all(most);
  }

  /**
   * Takes an import back whole: its reps as if they had never come, and the athletes whom it made, but for those of whom something else is
   * kept by now.
   *
   * @throws RefusedException if nothing of it is here
   */
  public TakenBack takeBack(long number) {
    return new SqlImports(workbench).takeBack(number);
  }

  /** As {@link #take(Reader, Order)}, of a file without a name and without rows after today. */
  public Result take(Reader in, boolean skipBadRows) {
    return take(in, new Order(skipBadRows, false, ""));
  }

  /**
   * Takes what is new in a file. An athlete is found by name whatever the case; one who is not known is made with the level not set,
   * the first contact of their first row as take-off foot, on the rung of their newest row.
   *
   * @param in the file; not closed
   * @param order what of it is taken
   */
  public Result take(Reader in, Order order) {
    RepCsv.Reading reading = RepCsv.read(in, order.later() ? LocalDate.MAX : LocalDate.now(workbench.clock()));
    List<Integer> waiting = reading.later().stream().map(RepCsv.Row::line).toList();
    if (reading.rows().isEmpty() || (!order.skipBadRows() && !reading.problems().isEmpty())) {
      return new Result(0, 0, reading.problems(), List.of(), waiting, 0);
    }
    return workbench
        .reps()
        .write(
            w -> {
              Look look = split(reading, w::inOrder);
              Map<String, Newcomer> names = new LinkedHashMap<>();
              for (RepCsv.Row row : look.rows()) {
                names.computeIfAbsent(SqlAthletes.key(row.athlete()), key -> new Newcomer(row)).see(row.rep());
              }
              List<Long> made = new ArrayList<>();
              Map<String, Long> ids = new HashMap<>();
              for (Map.Entry<String, Newcomer> e : names.entrySet()) {
                Athlete known = workbench.athletes().byName(e.getValue().first.athlete()).orElse(null);
                if (known == null) {
                  known = workbench.athletes().add(e.getValue().asAthlete());
                  made.add(known.id());
                }
                ids.put(e.getKey(), known.id());
              }
              List<Rep> reps = new ArrayList<>(look.rows().size());
              for (RepCsv.Row row : look.rows()) {
                Long id = ids.get(SqlAthletes.key(row.athlete()));
                if (id == null) {
                  throw new IllegalStateException("no athlete for line " + row.line());
                }
                reps.add(row.rep().of(id));
              }
              List<Long> logged = workbench.logbook().logAll(reps).stream().map(Rep::id).toList();
              long number = logged.isEmpty() ? 0 : new SqlImports(workbench).keep(order.name(), logged, made);
              return new Result(reps.size(), made.size(), look.problems(), look.there(), waiting, number);
            });
  }

  private Look split(RepCsv.Reading reading, LongFunction<List<Rep>> kept) {
    Map<String, Map<Said, Integer>> left = new HashMap<>();
    Set<String> unknown = new HashSet<>();
    List<RepCsv.Row> rows = new ArrayList<>();
    List<Integer> there = new ArrayList<>();
    for (RepCsv.Row row : reading.rows()) {
      String key = SqlAthletes.key(row.athlete());
      Map<Said, Integer> here =
          left.computeIfAbsent(
              key,
              k -> {
                Map<Said, Integer> counts = new HashMap<>();
                Optional<Athlete> athlete = workbench.athletes().byName(row.athlete());
                athlete.ifPresent(a -> kept.apply(a.id()).forEach(r -> counts.merge(Said.of(r), 1, Integer::sum)));
                if (athlete.isEmpty()) {
                  unknown.add(k);
                }
                return counts;
              });
      Said said = Said.of(row.rep());
      int equal = here.getOrDefault(said, 0);
      if (equal > 0) {
        here.put(said, equal - 1);
        there.add(row.line());
      } else {
        rows.add(row);
      }
    }
    return new Look(rows, there, reading.problems(), unknown.size(), reading.later().stream().map(RepCsv.Row::line).toList());
  }

  /** What a rep says whoever it belongs to and however its sequence is spelled. */
  private record Said(Rep rep) {
    static Said of(Rep r) {
      return new Said(
          new Rep(
              0, 0, r.date(), Sequence.of(r.sequence().contacts()), r.approachSteps(), r.surface(), r.footprints_m(), r.landing_m(),
              r.outcome(), r.brokeOffAfter(), r.markToSand_m(), r.judged(), r.faults()));
    }
  }

  /** What a file tells of somebody who is not known yet. */
  private static final class Newcomer {
    private final RepCsv.Row first;
    private Rep newest;

    Newcomer(RepCsv.Row first) {
      this.first = first;
      this.newest = first.rep();
    }

    void see(Rep rep) {
      if (!rep.date().isBefore(newest.date())) {
        newest = rep;
      }
    }

    Athlete asAthlete() {
      return new Athlete(0, first.athlete(), Level.NOT_SET, first.rep().sequence().contacts().get(0), newest.approachSteps());
    }
  }
}
