package boundwright.store;

import boundwright.athlete.Changes;
import boundwright.store.engine.Database;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads whose data changed from the table in which the database itself notes it (V22): a write by another process is seen like one by this.
 * Writers follow each other, so whoever has seen a count has seen all below it, and only newer rows are asked for.
 */
final class SqlChanges implements Changes {
  private static final long EVERYBODY = 0;

  private final Database database;
  private Seen seen = new Seen(0, Map.of());

  SqlChanges(Database database) {
    this.database = database;
  }

  /** What was seen so far: the newest count, and that of each athlete. */
  private record Seen(long upTo, Map<Long, Long> counts) implements Versions {
    @Override
    public long of(long athleteId) {
      return Math.max(counts.getOrDefault(athleteId, 0L), ofEverybody());
    }

    @Override
    public long ofEverybody() {
      return counts.getOrDefault(EVERYBODY, 0L);
    }

    Seen with(List<Row> rows) {
      if (rows.isEmpty()) {
        return this;
      }
      Map<Long, Long> now = new HashMap<>(counts);
      rows.forEach(r -> now.put(r.whose, r.count));
      return new Seen(rows.stream().mapToLong(Row::count).max().orElse(upTo), now);
    }
  }

  private record Row(long whose, long count) {}

  @Override
  public @Nullable Versions now() {
    return database.isWriting() ? null : look();
  }

  private synchronized Versions look() {
    long from = seen.upTo;
    List<Row> rows =
        database.read(
            h ->
                h.createQuery("SELECT whose, count FROM changed WHERE count > :seen")
                    .bind("seen", from)
                    .map((r, c) -> new Row(r.getLong(1), r.getLong(2)))
                    .list());
    seen = seen.with(rows);
    return seen;
  }
}
