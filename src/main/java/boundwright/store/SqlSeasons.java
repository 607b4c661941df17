package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.load.GuardSettings;
import boundwright.quantity.RefusedException;
import boundwright.quantity.Remembered;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import boundwright.store.season.PlanFile;
import boundwright.store.season.SeasonFile;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Seasons, their published plans and the secrets of their calendars in the database. */
final class SqlSeasons implements SeasonRepository {
  private static final String KEPT =
      "SELECT id, key, name, first, last, edition, coalesce((SELECT max(version) FROM season_version v WHERE v.season_id = season.id), 0) AS published,"
          + " coalesce((SELECT v.edition FROM season_version v WHERE v.season_id = season.id AND v.replaced IS NULL), 0) AS planned"
          + " FROM season WHERE EXISTS (SELECT 1 FROM season_member m WHERE m.season_id = season.id) ";

  /** Athletes of some seasons whose rows are remembered as they were read [rows]. */
  private static final int REMEMBERED = 400;

  private final Database database;
  private final Remembered<String, Member> readMembers = new Remembered<>(REMEMBERED);
  private final Remembered<String, SeasonPlan.Year> readYears = new Remembered<>(REMEMBERED);

  SqlSeasons(Database database) {
    this.database = database;
  }

  @Override
  public Kept add(SeasonInput season, String key, Instant made) {
    return database.write(
        h -> {
          long id =
              h.createUpdate("INSERT INTO season (key, name, first, last, frame, made) VALUES (:key, :name, :first, :last, :frame, :made)")
                  .bind("key", key)
                  .bind("name", season.name())
                  .bind("first", season.first().toString())
                  .bind("last", season.last().toString())
                  .bind("frame", SeasonFile.frame(season, facility(h)))
                  .bind("made", made.toString())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          members(h, id, season, 1);
          return new Kept(id, key, season.name(), season.first(), season.last(), 0, 1, 0);
        });
  }

  @Override
  public void keep(long id, SeasonInput season) {
    database.write(
        h -> {
          Frame was = now(h, id);
          String frame = SeasonFile.frame(season, facility(h));
          int edition = was.edition() + 1;
          if (!members(h, id, season, edition) && frame.equals(was.frame())) {
            return 0;
          }
          h.createUpdate("INSERT INTO season_edition (season_id, edition, frame) VALUES (:id, :edition, :frame)")
              .bind("id", id)
              .bind("edition", was.edition())
              .bind("frame", was.frame())
              .execute();
          return h.createUpdate("UPDATE season SET name = :name, first = :first, last = :last, frame = :frame, edition = :edition WHERE id = :id")
              .bind("id", id)
              .bind("name", season.name())
              .bind("first", season.first().toString())
              .bind("last", season.last().toString())
              .bind("frame", frame)
              .bind("edition", edition)
              .execute();
        });
  }

  /** The season without its squad, in an edition. */
  private record Frame(int edition, String frame) {}

  private static Frame now(Handle h, long id) {
    return h.createQuery("SELECT edition, frame FROM season WHERE id = :id")
        .bind("id", id)
        .map((r, c) -> new Frame(r.getInt("edition"), r.getString("frame")))
        .findOne()
        .orElseThrow(() -> gone(id));
  }

  /** An athlete's row. */
  private record MemberRow(int place, String member) {}

  /**
   * Keeps the athletes of an edition; rows that are as they were stay, the others are put beside.
   *
   * @return whether any is otherwise
   */
  private static boolean members(Handle h, long id, SeasonInput season, int edition) {
    Map<Long, MemberRow> rows = new LinkedHashMap<>();
    for (Member m : season.squad()) {
      known(h, m.id(), m.name());
      rows.put(m.id(), new MemberRow(rows.size() + 1, SeasonFile.member(m)));
    }
    Map<Long, MemberRow> before = new HashMap<>();
    h.createQuery("SELECT athlete_id, place, member FROM season_member WHERE season_id = :id")
        .bind("id", id)
        .map((r, c) -> before.put(r.getLong("athlete_id"), new MemberRow(r.getInt("place"), r.getString("member"))))
        .list();
    if (rows.equals(before)) {
      return false;
    }
    before.forEach(
        (athlete, row) -> {
          if (!row.equals(rows.get(athlete))) {
            away(h, id, athlete, edition);
          }
        });
    rows.forEach(
        (athlete, row) -> {
          if (!row.equals(before.get(athlete))) {
            h.createUpdate("INSERT INTO season_member (season_id, athlete_id, place, member, since) VALUES (:season, :athlete, :place, :member, :since)")
                .bind("season", id)
                .bind("athlete", athlete)
                .bind("place", row.place())
                .bind("member", row.member())
                .bind("since", edition)
                .execute();
          }
        });
    return true;
  }

  /** Puts a row aside that holds no more in an edition. */
  private static void away(Handle h, long id, long athlete, int edition) {
    h.createUpdate(
            "INSERT INTO season_member_before (season_id, athlete_id, since, last, place, member)"
                + " SELECT season_id, athlete_id, since, :last, place, member FROM season_member WHERE season_id = :season AND athlete_id = :athlete")
        .bind("season", id)
        .bind("athlete", athlete)
        .bind("last", edition - 1)
        .execute();
    h.createUpdate("DELETE FROM season_member WHERE season_id = :season AND athlete_id = :athlete").bind("season", id).bind("athlete", athlete).execute();
  }

  @Override
  public List<Kept> all() {
    return database.read(h -> h.createQuery(KEPT + "ORDER BY first DESC, id DESC").map((r, c) -> kept(r)).list());
  }

  @Override
  public Optional<Kept> byId(long id) {
    return database.read(h -> h.createQuery(KEPT + "AND id = :id").bind("id", id).map((r, c) -> kept(r)).findOne());
  }

  @Override
  public Optional<SeasonInput> input(long id) {
    return database.read(h -> h.createQuery("SELECT edition FROM season WHERE id = :id").bind("id", id).mapTo(Integer.class).findOne().flatMap(e -> input(h, id, e)));
  }

  @Override
  public Optional<SeasonInput> input(long id, int edition) {
    return database.read(h -> input(h, id, edition));
  }

  private Optional<SeasonInput> input(Handle h, long id, int edition) {
    Optional<String> frame =
        h.createQuery(
                "SELECT frame FROM season WHERE id = :id AND edition = :edition"
                    + " UNION ALL SELECT frame FROM season_edition WHERE season_id = :id AND edition = :edition")
            .bind("id", id)
            .bind("edition", edition)
            .mapTo(String.class)
            .findOne();
    List<Member> members =
        h.createQuery(
                "SELECT member, place, athlete.name AS name FROM"
                    + " (SELECT athlete_id, place, member FROM season_member WHERE season_id = :id AND since <= :edition"
                    + " UNION ALL SELECT athlete_id, place, member FROM season_member_before WHERE season_id = :id AND since <= :edition AND last >= :edition) AS held"
                    + " JOIN athlete ON athlete.id = athlete_id ORDER BY place")
            .bind("id", id)
            .bind("edition", edition)
            .map((r, c) -> called(readMembers.of(r.getString("member"), SeasonFile::readMember), r.getString("name")))
            .list();
    if (frame.isEmpty() || members.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(SeasonFile.read(frame.get(), members, facility(h)));
  }

  /** The same under the name of today. */
  private static Member called(Member m, String name) {
    Athlete a = m.athlete();
    return new Member(
        new Athlete(a.id(), name, a.level(), a.takeOffFoot(), a.rung()), m.growing(), m.firstSession(), m.steps(), m.fullSteps(), m.days(),
        m.peakWeek(), m.joins(), m.away(), m.entries(), m.wishes(), m.past());
  }

  @Override
  public SeasonPlan publish(long id, SeasonPlan plan, Instant at) {
    return database.write(
        h -> {
          Frame of = now(h, id);
          int version =
              1 + h.createQuery("SELECT coalesce(max(version), 0) FROM season_version WHERE season_id = :id").bind("id", id).mapTo(Integer.class).one();
          h.createUpdate("UPDATE season_version SET replaced = :at WHERE season_id = :id AND replaced IS NULL")
              .bind("at", at.toString())
              .bind("id", id)
              .execute();
          long row =
              h.createUpdate("INSERT INTO season_version (season_id, version, frame, published, edition) VALUES (:id, :version, :frame, :at, :edition)")
                  .bind("id", id)
                  .bind("version", version)
                  .bind("frame", of.frame())
                  .bind("edition", of.edition())
                  .bind("at", at.toString())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          int place = 1;
          for (SeasonPlan.Year y : plan.years()) {
            known(h, y.athleteId(), y.athlete());
            h.createUpdate("INSERT INTO season_year (version_id, athlete_id, place, plan) VALUES (:version, :athlete, :place, :plan)")
                .bind("version", row)
                .bind("athlete", y.athleteId())
                .bind("place", place++)
                .bind("plan", PlanFile.year(y))
                .execute();
          }
          return new SeasonPlan(plan.name(), version, plan.years());
        });
  }

  @Override
  public Optional<SeasonPlan> published(long id) {
    return database.read(h -> rows(h, id, "AND replaced IS NULL").findFirst().map(Version::plan));
  }

  @Override
  public List<Version> versions(long id) {
    return database.read(h -> rows(h, id, "").toList());
  }

  private Stream<Version> rows(Handle h, long id, String which) {
    String name = h.createQuery("SELECT name FROM season WHERE id = :id").bind("id", id).mapTo(String.class).findOne().orElse("");
    return h.createQuery("SELECT id, version, frame, published, replaced FROM season_version WHERE season_id = :id " + which + " ORDER BY version")
        .bind("id", id)
        .map((r, c) -> new Row(r.getLong("id"), r.getInt("version"), SeasonFile.outside(r.getString("frame")), Instant.parse(r.getString("published")), Columns.moment(r, "replaced")))
        .list()
        .stream()
        .map(row -> new Version(new SeasonPlan(name, row.version(), years(h, row.id())), row.outside().meets(), row.outside().venues(), row.published(), row.replaced()));
  }

  private record Row(long id, int version, SeasonFile.Outside outside, Instant published, @Nullable Instant replaced) {}

  private List<SeasonPlan.Year> years(Handle h, long versionId) {
    return h.createQuery(
            "SELECT plan, athlete.name AS name FROM season_year JOIN athlete ON athlete.id = athlete_id WHERE version_id = :id ORDER BY place")
        .bind("id", versionId)
        .map(
            (r, c) -> {
              SeasonPlan.Year y = readYears.of(r.getString("plan"), PlanFile::readYear);
              return new SeasonPlan.Year(y.athleteId(), r.getString("name"), y.days(), y.climbs(), y.wanted());
            })
        .list();
  }

  @Override
  public boolean remove(long id) {
    boolean removed = database.write(h -> h.createUpdate("DELETE FROM season WHERE id = :id").bind("id", id).execute()) > 0;
    database.foldLog();
    return removed;
  }

  @Override
  public void keepSecret(String hash, CalendarKey key) {
    database.write(
        h -> {
          drop(h, key.seasonId(), key.athleteId());
          return h.createUpdate("INSERT INTO calendar_secret (secret, season_id, athlete_id, made) VALUES (:secret, :season, :athlete, :made)")
              .bind("secret", hash)
              .bind("season", key.seasonId())
              .bind("athlete", key.athleteId())
              .bind("made", key.made().toString())
              .execute();
        });
  }

  @Override
  public Optional<CalendarKey> bySecret(String hash) {
    return database.read(
        h ->
            h.createQuery("SELECT season_id, athlete_id, made FROM calendar_secret WHERE secret = :secret")
                .bind("secret", hash)
                .map((r, c) -> key(r))
                .findOne());
  }

  @Override
  public List<CalendarKey> secrets(long seasonId) {
    return database.read(
        h ->
            h.createQuery("SELECT season_id, athlete_id, made FROM calendar_secret WHERE season_id = :id ORDER BY coalesce(athlete_id, 0)")
                .bind("id", seasonId)
                .map((r, c) -> key(r))
                .list());
  }

  @Override
  public void dropSecret(long seasonId, @Nullable Long athleteId) {
    database.write(h -> drop(h, seasonId, athleteId));
  }

  private static int drop(Handle h, long seasonId, @Nullable Long athleteId) {
    return h.createUpdate("DELETE FROM calendar_secret WHERE season_id = :season AND coalesce(athlete_id, 0) = :athlete")
        .bind("season", seasonId)
        .bind("athlete", athleteId == null ? 0 : athleteId)
        .execute();
  }

  private static CalendarKey key(ResultSet r) throws SQLException {
    long athlete = r.getLong("athlete_id");
    @Nullable Long whose = r.wasNull() ? null : (Long) athlete;
    return new CalendarKey(r.getLong("season_id"), whose, Instant.parse(r.getString("made")));
  }

  private static Kept kept(ResultSet r) throws SQLException {
    return new Kept(
        r.getLong("id"), r.getString("key"), r.getString("name"), LocalDate.parse(r.getString("first")), LocalDate.parse(r.getString("last")), r.getInt("published"),
        r.getInt("edition"), r.getInt("planned"));
  }

  private static GuardSettings facility(Handle h) {
    return GuardRows.read(SettingRows.read(h));
  }

  private static void known(Handle h, long athleteId, String name) {
    if (h.createQuery("SELECT count(*) FROM athlete WHERE id = :id").bind("id", athleteId).mapTo(Integer.class).one() == 0) {
      throw new RefusedException(
          name + ", number " + athleteId + ", is not in the squad (any more). Nothing was kept. Add them to the squad, or take them out of the season.");
    }
  }

  private static RefusedException gone(long id) {
    return new RefusedException("The season with the number " + id + " is not in the store (any more). Nothing was changed. Load the page again.");
  }
}
