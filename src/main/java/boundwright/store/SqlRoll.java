package boundwright.store;

import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import boundwright.track.Group;
import boundwright.track.RollRepository;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Who is away, and the groups, in the database. */
final class SqlRoll implements RollRepository {
  private final Database database;

  SqlRoll(Database database) {
    this.database = database;
  }

  @Override
  public Set<Long> away(LocalDate day) {
    return database.read(
        h -> h.createQuery("SELECT athlete_id FROM away WHERE date = :date").bind("date", day.toString()).mapTo(Long.class).set());
  }

  @Override
  public void keepAway(LocalDate day, Set<Long> away) {
    database.write(
        h -> {
          h.createUpdate("DELETE FROM away WHERE date = :date").bind("date", day.toString()).execute();
          // one of them may have been erased since the page was opened
          return all(
              h, "INSERT INTO away (date, athlete_id) SELECT :key, id FROM athlete WHERE id = :athlete", day.toString(), away);
        });
  }

  @Override
  public List<Group> groups() {
    return database.read(
        h -> {
          Map<Long, Set<Long>> members = new HashMap<>();
          h.createQuery("SELECT group_id, athlete_id FROM group_member")
              .map((r, c) -> new long[] {r.getLong("group_id"), r.getLong("athlete_id")})
              .forEach(m -> members.computeIfAbsent(m[0], g -> new HashSet<>()).add(m[1]));
          return h.createQuery("SELECT id, name FROM squad_group ORDER BY name_key")
              .map((r, c) -> new Group(r.getLong("id"), r.getString("name"), members.getOrDefault(r.getLong("id"), Set.of())))
              .list();
        });
  }

  @Override
  public Group keep(Group group) {
    return database.write(
        h -> {
          String key = SqlAthletes.key(group.name());
          h.createQuery("SELECT name FROM squad_group WHERE name_key = :key AND id <> :id")
              .bind("key", key)
              .bind("id", group.id())
              .mapTo(String.class)
              .findOne()
              .ifPresent(
                  taken -> {
                    throw new RefusedException("A group called " + taken + " is there already. Add the athletes to it, or choose another name.");
                  });
          long id = group.id() == 0 ? insert(h, group, key) : rename(h, group, key);
          h.createUpdate("DELETE FROM group_member WHERE group_id = :id").bind("id", id).execute();
          all(
              h,
              "INSERT INTO group_member (group_id, athlete_id) SELECT CAST(:key AS INTEGER), id FROM athlete WHERE id = :athlete",
              String.valueOf(id),
              group.members());
          return new Group(id, group.name(), group.members());
        });
  }

  private static long insert(Handle h, Group group, String key) {
    return h.createUpdate("INSERT INTO squad_group (name, name_key) VALUES (:name, :key)")
        .bind("name", group.name())
        .bind("key", key)
        .executeAndReturnGeneratedKeys()
        .mapTo(Long.class)
        .one();
  }

  private static long rename(Handle h, Group group, String key) {
    int there =
        h.createUpdate("UPDATE squad_group SET name = :name, name_key = :key WHERE id = :id")
            .bind("name", group.name())
            .bind("key", key)
            .bind("id", group.id())
            .execute();
    if (there == 0) {
      throw new RefusedException("The group " + group.name() + " is not there any more. Make it again, or choose another.");
    }
    return group.id();
  }

  private static int all(Handle h, String sql, String key, Set<Long> athletes) {
    if (athletes.isEmpty()) {
      return 0;
    }
    PreparedBatch batch = h.prepareBatch(sql);
    athletes.forEach(a -> batch.bind("key", key).bind("athlete", a).add());
    return batch.execute().length;
  }

  @Override
  public void removeGroup(long id) {
    database.write(h -> h.createUpdate("DELETE FROM squad_group WHERE id = :id").bind("id", id).execute());
  }
}
