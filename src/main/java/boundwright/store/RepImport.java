package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.flight.Rep;
import java.io.Reader;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
   */
  public record Result(int taken, int newAthletes, List<RepCsv.Problem> problems) {
    /** Takes a copy. */
    public Result {
      problems = List.copyOf(problems);
    }
  }

  /**
   * Takes a file. An athlete is found by name whatever the case; one who is not known is made as intermediate, with the first
   * contact of their first row as take-off foot, on the rung of their newest row.
   *
   * @param in the file; not closed
   * @param skipBadRows whether the good rows are taken although there are bad ones; without it nothing is taken then. A file
   *     whose columns or quotes are wrong has no good rows.
   */
  public Result take(Reader in, boolean skipBadRows) {
    RepCsv.Reading reading = RepCsv.read(in, LocalDate.now(workbench.clock()));
    if (reading.rows().isEmpty() || (!skipBadRows && !reading.problems().isEmpty())) {
      return new Result(0, 0, reading.problems());
    }
    Map<String, Newcomer> names = new LinkedHashMap<>();
    for (RepCsv.Row row : reading.rows()) {
      names.computeIfAbsent(SqlAthletes.key(row.athlete()), key -> new Newcomer(row)).see(row.rep());
    }
    return workbench
        .reps()
        .write(
            w -> {
              int made = 0;
              Map<String, Long> ids = new HashMap<>();
              for (Map.Entry<String, Newcomer> e : names.entrySet()) {
                Athlete known = workbench.athletes().byName(e.getValue().first.athlete()).orElse(null);
                if (known == null) {
                  known = workbench.athletes().add(e.getValue().asAthlete());
                  made++;
                }
                ids.put(e.getKey(), known.id());
              }
              List<Rep> reps = new ArrayList<>(reading.rows().size());
              for (RepCsv.Row row : reading.rows()) {
                Long id = ids.get(SqlAthletes.key(row.athlete()));
                if (id == null) {
                  throw new IllegalStateException("no athlete for line " + row.line());
                }
                reps.add(row.rep().of(id));
              }
              workbench.track().take(reps);
              return new Result(reps.size(), made, reading.problems());
            });
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
