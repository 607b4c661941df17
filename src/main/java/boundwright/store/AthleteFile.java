package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.store.backup.Catalogue;
import boundwright.store.engine.Database;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Everything that is kept of one athlete, for the person who asks what is kept of them. Which tables hold something of a person
 * is read from the database itself: what goes when an athlete is erased is what is listed here, so a table of a later program
 * cannot be forgotten. Rows of others that theirs point to, such as a meet, come along; what was learned is left out, because
 * it is worked out from the rest and is no text. Contacts of clips that a coach agreed to are files beside the database; they are listed
 * as {@code agreed_contacts}.
 */
public final class AthleteFile {
  private final Workbench workbench;

  /** Reads from this store. */
  public AthleteFile(Workbench workbench) {
    this.workbench = workbench;
  }

  /**
   * All rows by table, the athlete's own first, each row by column in the order of the table; a column's name or the column
   * {@code unit} beside it says the unit. Values are texts, numbers, or null; the body points of a clip, which are bytes, are Base64. Tables without a row of theirs are left out.
   */
  public Map<String, List<Map<String, @Nullable Object>>> of(Athlete athlete) {
    Map<String, List<Map<String, @Nullable Object>>> out = new LinkedHashMap<>();
    rows(athlete.id()).forEach((table, rows) -> out.put(table, rows.stream().map(AthleteFile::asText).toList()));
    List<Map<String, @Nullable Object>> labels = new ArrayList<>();
    workbench.clips().lessons().of(athlete.id()).forEach(
        (clip, file) -> {
          Map<String, @Nullable Object> row = new LinkedHashMap<>();
          row.put("clip_id", clip);
          row.put("file", Base64.getEncoder().encodeToString(file));
          labels.add(row);
        });
    if (!labels.isEmpty()) {
      out.put("agreed_contacts", labels);
    }
    return out;
  }

  /**
   * Erases those of whom nothing more is kept than rows of these tables: what a file brought is taken back, what came since stays.
   *
   * @return how many were erased
   */
  public int eraseThoseWithOnly(Set<String> tables, List<Long> athletes) {
    int erased = 0;
    for (long id : athletes) {
      if (workbench.athletes().byId(id).filter(who -> tables.containsAll(of(who).keySet())).isPresent()) {
        workbench.athletes().erase(id);
        erased++;
      }
    }
    return erased;
  }

  /** As {@link #of}, from the database alone, with bytes as such. */
  public Map<String, List<Map<String, @Nullable Object>>> rows(long athleteId) {
    Database database = workbench.database();
    return database.read(
        h -> {
          try {
            return read(h, database, athleteId);
          } catch (SQLException e) {
            throw new IllegalStateException(e); // said in words by the database
          }
        });
  }

  private static Map<String, List<Map<String, @Nullable Object>>> read(Handle h, Database database, long athleteId) throws SQLException {
    List<Catalogue.Reference> references = database.references(h);
    Map<String, String> where = new LinkedHashMap<>();
    where.put("athlete", "id = :athlete");
    boolean found = true;
    while (found) {
      found = false;
      for (Catalogue.Reference ref : references) {
        String target = where.get(ref.target());
        if (target != null && !where.containsKey(ref.table()) && "CASCADE".equals(ref.whenErased())) {
          where.put(ref.table(), ref.column() + " IN (SELECT " + ref.targetColumn() + " FROM " + ref.target() + " WHERE " + target + ")");
          found = true;
        }
      }
    }
    Map<String, Set<String>> pointedTo = new HashMap<>();
    for (Catalogue.Reference ref : references) {
      String own = where.get(ref.table());
      if (own != null && !where.containsKey(ref.target())) {
        pointedTo
            .computeIfAbsent(ref.target(), t -> new LinkedHashSet<>())
            .add(ref.targetColumn() + " IN (SELECT " + ref.column() + " FROM " + ref.table() + " WHERE " + own + ")");
      }
    }
    pointedTo.forEach((table, conditions) -> where.put(table, String.join(" OR ", conditions)));
    where.remove("learned");
    Map<String, List<Map<String, @Nullable Object>>> out = new LinkedHashMap<>();
    for (Map.Entry<String, String> e : where.entrySet()) {
      String question;
      try (Statement s = h.getConnection().createStatement()) {
        question = database.catalogue().rows(s, e.getKey(), e.getValue());
      }
      List<Map<String, @Nullable Object>> rows = h.createQuery(question).bind("athlete", athleteId).map((r, c) -> row(r)).list();
      if (!rows.isEmpty()) {
        out.put(e.getKey(), rows);
      }
    }
    return out;
  }

  private static Map<String, @Nullable Object> row(ResultSet r) throws SQLException {
    ResultSetMetaData columns = r.getMetaData();
    Map<String, @Nullable Object> row = new LinkedHashMap<>();
    for (int i = 1; i <= columns.getColumnCount(); i++) {
      row.put(columns.getColumnName(i), r.getObject(i));
    }
    return row;
  }

  private static Map<String, @Nullable Object> asText(Map<String, @Nullable Object> row) {
    Map<String, @Nullable Object> out = new LinkedHashMap<>(row);
    out.replaceAll((column, value) -> value instanceof byte[] bytes ? Base64.getEncoder().encodeToString(bytes) : value);
    return out;
  }
}
