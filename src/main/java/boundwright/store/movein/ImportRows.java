package boundwright.store.movein;

import boundwright.quantity.Notes;
import boundwright.store.engine.Database;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Which athletes, groups, meets and attempts came with which file, in the database. */
final class ImportRows {
  private static final List<List<String>> COUNTED =
      List.of(
          List.of("import_rep", "rep", "reps"), List.of("import_attempt", "attempt", "attempts"), List.of("import_athlete", "athlete", "athletes"),
          List.of("import_filled", "entry", "entries"), List.of("import_member", "place in a group", "places in groups"));

  private final Database database;

  ImportRows(Database database) {
    this.database = database;
  }

  /** Something that came with a file, as the tables call it. */
  enum Came {
    ATHLETE("import_athlete", "athlete_id"),
    MEET("import_meet", "meet_id"),
    ENTRANT("import_entrant", "entrant_id"),
    ATTEMPT("import_attempt", "attempt_id"),
    GROUP("import_group", "group_id");

    private final String table;
    private final String column;

    Came(String table, String column) {
      this.table = table;
      this.column = column;
    }
  }

  /** What was empty of an athlete who was here. */
  enum Filled {
    BORN,
    SEX,
    LEVEL
  }

  /** An athlete and what of them was filled. */
  record Fill(long athleteId, Filled field) {}

  /** An athlete and the group that they were put into. */
  record Member(long athleteId, long groupId) {}

  /** Begins an import and gives it a number. */
  long begin(Kind kind, String name, Instant at) {
    return database.write(
        h ->
            h.createUpdate("INSERT INTO import_file (name, taken, kind) VALUES (:name, :taken, :kind)")
                .bind("name", name)
                .bind("taken", at.toString())
                .bind("kind", kind.name())
                .executeAndReturnGeneratedKeys("id")
                .mapTo(Long.class)
                .one());
  }

  void came(long number, Came what, long id) {
    database.write(h -> h.execute("INSERT INTO " + what.table + " (" + what.column + ", import_id) VALUES (?, ?)", id, number));
  }

  void filled(long number, long athleteId, Filled field) {
    database.write(h -> h.execute("INSERT INTO import_filled (import_id, athlete_id, field) VALUES (?, ?, ?)", number, athleteId, field.name()));
  }

  void member(long number, long athleteId, long groupId) {
    database.write(h -> h.execute("INSERT INTO import_member (import_id, athlete_id, group_id) VALUES (?, ?, ?)", number, athleteId, groupId));
  }

  List<Long> of(long number, Came what) {
    return database.read(
        h ->
            h.createQuery("SELECT " + what.column + " FROM " + what.table + " WHERE import_id = :id ORDER BY " + what.column)
                .bind("id", number)
                .mapTo(Long.class)
                .list());
  }

  List<Fill> filled(long number) {
    return database.read(
        h ->
            h.createQuery("SELECT athlete_id, field FROM import_filled WHERE import_id = :id ORDER BY athlete_id, field")
                .bind("id", number)
                .map((r, c) -> new Fill(r.getLong("athlete_id"), Filled.valueOf(r.getString("field"))))
                .list());
  }

  List<Member> members(long number) {
    return database.read(
        h ->
            h.createQuery("SELECT athlete_id, group_id FROM import_member WHERE import_id = :id ORDER BY group_id, athlete_id")
                .bind("id", number)
                .map((r, c) -> new Member(r.getLong("athlete_id"), r.getLong("group_id")))
                .list());
  }

  Optional<Kind> kind(long number) {
    return database.read(
        h -> h.createQuery("SELECT kind FROM import_file WHERE id = :id").bind("id", number).mapTo(String.class).findOne().map(Kind::valueOf));
  }

  /** Forgets an import; what came with it stays. */
  void end(long number) {
    database.write(h -> h.execute("DELETE FROM import_file WHERE id = ?", number));
  }

  /** Takes out attempts, then names on lists that have none left, then meets whose lists are empty, as far as they came with a file. */
  int dropResults(long number) {
    return database.write(
        h -> {
          int attempts = h.execute("DELETE FROM meet_attempt WHERE id IN (SELECT attempt_id FROM import_attempt WHERE import_id = ?)", number);
          h.execute(
              "DELETE FROM meet_entrant WHERE id IN (SELECT entrant_id FROM import_entrant WHERE import_id = ?)"
                  + " AND NOT EXISTS (SELECT 1 FROM meet_attempt t WHERE t.entrant_id = meet_entrant.id)",
              number);
          h.execute(
              "DELETE FROM meet WHERE id IN (SELECT meet_id FROM import_meet WHERE import_id = ?)"
                  + " AND NOT EXISTS (SELECT 1 FROM meet_entrant e WHERE e.meet_id = meet.id)",
              number);
          return attempts;
        });
  }

  /** The files of which something is still here, newest first. */
  List<Past> past(int most) {
    return database.read(
        h -> {
          List<Past> out = new ArrayList<>();
          h.createQuery("SELECT id, kind, name, taken FROM import_file ORDER BY id DESC")
              .map((r, c) -> new Past(r.getLong("id"), Kind.valueOf(r.getString("kind")), r.getString("name"), Instant.parse(r.getString("taken")), ""))
              .list()
              .forEach(
                  p -> {
                    String here = out.size() < most ? here(h, p.number()) : "";
                    if (!here.isEmpty()) {
                      out.add(new Past(p.number(), p.kind(), p.name(), p.at(), here));
                    }
                  });
          return out;
        });
  }

  private static String here(Handle h, long number) {
    List<String> out = new ArrayList<>();
    for (List<String> what : COUNTED) {
      int n = h.createQuery("SELECT count(*) FROM " + what.get(0) + " WHERE import_id = :id").bind("id", number).mapTo(Integer.class).one();
      if (n > 0) {
        out.add(Notes.counted(n, what.get(1), what.get(2)));
      }
    }
    return String.join(", ", out);
  }

  Optional<String> remembered(String header) {
    return database.read(
        h -> h.createQuery("SELECT chosen FROM import_columns WHERE header = :header").bind("header", header).mapTo(String.class).findOne());
  }

  void remember(String header, String chosen) {
    database.write(
        h ->
            h.createUpdate("INSERT INTO import_columns (header, chosen) VALUES (:header, :chosen) ON CONFLICT (header) DO UPDATE SET chosen = excluded.chosen")
                .bind("header", header)
                .bind("chosen", chosen)
                .execute());
  }
}
