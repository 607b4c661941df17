package boundwright.store;

import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Which reps and athletes came with which file. */
final class SqlImports {
  /** What an athlete has who was only made by a file. */
  private static final Set<String> OF_A_FILE = Set.of("athlete", "athlete_token", "import_athlete", "import_file");

  /** Rows that are held at once. */
  private static final int AT_ONCE = 5_000;

  private final Workbench bench;

  SqlImports(Workbench bench) {
    this.bench = bench;
  }

  private Database database() {
    return bench.database();
  }

  /** Writes down what came; inside the write that takes it. */
  long keep(String name, long[] reps, Set<Long> athletes) {
    return database().write(
        h -> {
          long id =
              h.createUpdate("INSERT INTO import_file (name, taken) VALUES (:name, :taken)")
                  .bind("name", name)
                  .bind("taken", bench.clock().instant().toString())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          for (int at = 0; at < reps.length; at += AT_ONCE) {
            var rows = h.prepareBatch("INSERT INTO import_rep (rep_id, import_id) VALUES (?, ?)");
            for (int i = at; i < Math.min(at + AT_ONCE, reps.length); i++) {
              rows.add(reps[i], id);
            }
            rows.execute();
          }
          for (long a : athletes) {
            h.execute("INSERT INTO import_athlete (athlete_id, import_id) VALUES (?, ?)", a, id);
          }
          return id;
        });
  }

  RepImport.TakenBack takeBack(long id) {
    List<Long> made = new ArrayList<>();
    int reps =
        bench.reps().write(
            w -> {
              List<Rep> came =
                  database().read(h -> h.createQuery("SELECT rep_id FROM import_rep WHERE import_id = :id ORDER BY rep_id").bind("id", id).mapTo(Long.class).list()).stream()
                      .map(r -> w.find(r).orElseThrow())
                      .toList();
              if (came.isEmpty()) {
                throw new RefusedException("Of import number " + id + " nothing is here (any more). Nothing was changed.");
              }
              made.addAll(database().read(h -> h.createQuery("SELECT athlete_id FROM import_athlete WHERE import_id = :id").bind("id", id).mapTo(Long.class).list()));
              bench.logbook().together(
                  changes -> {
                    came.forEach(changes::remove);
                    return came;
                  });
              database().write(h -> h.execute("DELETE FROM import_file WHERE id = ?", id));
              return came.size();
            });
    int athletes = new AthleteFile(bench).eraseThoseWithOnly(OF_A_FILE, made);
    return new RepImport.TakenBack(reps, athletes);
  }
}
