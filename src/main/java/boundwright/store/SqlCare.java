package boundwright.store;

import boundwright.athlete.growth.FastGrowth;
import boundwright.athlete.growth.GrowthDesk;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.PersonRepository;
import boundwright.load.Answer;
import boundwright.load.CareRepository;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.back.WayBack;
import boundwright.load.rating.SessionRating;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** What is known of an athlete's legs beyond their reps, and what was decided about them, in the database. */
final class SqlCare implements CareRepository {
  private static final int PAIN_DAYS = 60;
  private static final String HOLDS = "SELECT athlete_id, id, from_date, note, cleared_by, cleared_on FROM medical_hold ";

  private final Database database;
  private final GrowthDesk growth;
  private final PersonRepository people;

  SqlCare(Database database, GrowthDesk growth, PersonRepository people) {
    this.database = database;
    this.growth = growth;
    this.people = people;
  }

  private record Growing(boolean growing, @Nullable LocalDate first) {}

  @Override
  public LegCare care(long athleteId, LocalDate today) {
    return cares(List.of(athleteId), today).getOrDefault(athleteId, LegCare.NONE);
  }

  @Override
  public Map<Long, LegCare> cares(List<Long> athletes, LocalDate today) {
    if (athletes.isEmpty()) {
      return Map.of();
    }
    Map<Long, FastGrowth> fast = growth.fast(athletes, today);
    Map<Long, Person> known = people.people(athletes);
    return database.read(
        h -> {
          Map<Long, Growing> growing = young(known, today);
          h.createQuery("SELECT athlete_id, growing, first_session FROM care WHERE athlete_id IN (<ids>)")
              .bindList("ids", athletes)
              .map((r, c) -> growing.put(r.getLong("athlete_id"), new Growing(r.getBoolean("growing"), Columns.day(r, "first_session"))))
              .list();
          Map<Long, List<Pain>> pains = new HashMap<>();
          h.createQuery(
                  "SELECT athlete_id, id, date, area, level, settled, refer FROM pain"
                      + " WHERE athlete_id IN (<ids>) AND date BETWEEN :from AND :today ORDER BY date, id")
              .bindList("ids", athletes)
              .bind("from", today.minusDays(PAIN_DAYS).toString())
              .bind("today", today.toString())
              .map((r, c) -> pains.computeIfAbsent(r.getLong("athlete_id"), id -> new ArrayList<>()).add(pain(r)))
              .list();
          Map<Long, List<MedicalHold>> holds = new HashMap<>();
          h.createQuery(HOLDS + "WHERE athlete_id IN (<ids>) ORDER BY from_date, id")
              .bindList("ids", athletes)
              .map((r, c) -> holds.computeIfAbsent(r.getLong("athlete_id"), id -> new ArrayList<>()).add(hold(r)))
              .list();
          Map<Long, List<WayBack>> ways = WayBackRows.of(h, athletes);
          Map<Long, List<Pain>> since = painsSince(h, ways);
          GuardSettings settings = ways.isEmpty() ? GuardSettings.DEFAULT : GuardRows.read(SettingRows.read(h));
          Map<Long, LegCare> out = new HashMap<>();
          for (long id : athletes) {
            Growing kept = growing.getOrDefault(id, new Growing(false, null));
            LegCare legs =
                new LegCare(kept.growing(), kept.first(), pains.getOrDefault(id, List.of()), holds.getOrDefault(id, List.of()), List.of(), fast.get(id));
            out.put(id, legs.withWays(ways.getOrDefault(id, List.of()), since.getOrDefault(id, List.of()), settings.limits().pain(), today));
          }
          return out;
        });
  }

  /** Whoever is young enough by the birth date to count as growing until the coach says otherwise. */
  private static Map<Long, Growing> young(Map<Long, Person> known, LocalDate today) {
    Map<Long, Growing> out = new HashMap<>();
    known.forEach((id, p) -> p.age(today).ifPresent(age -> out.put(id, new Growing(age < LegCare.GROWING_UNDER, null))));
    return out;
  }

  @Override
  public List<Pain> pains(long athleteId, LocalDate from) {
    return database.read(h -> pains(h, athleteId, from));
  }

  /** Of everybody with a way back, since the first of all those began or longer. */
  private static Map<Long, List<Pain>> painsSince(Handle h, Map<Long, List<WayBack>> ways) {
    Map<Long, List<Pain>> out = new HashMap<>();
    ways.values().stream()
        .map(own -> own.get(0).begun())
        .min(Comparator.naturalOrder())
        .ifPresent(
            from ->
                h.createQuery("SELECT athlete_id, id, date, area, level, settled, refer FROM pain WHERE athlete_id IN (<ids>) AND date >= :from ORDER BY date, id")
                    .bindList("ids", List.copyOf(ways.keySet()))
                    .bind("from", from.toString())
                    .map((r, c) -> out.computeIfAbsent(r.getLong("athlete_id"), id -> new ArrayList<>()).add(pain(r)))
                    .list());
    return out;
  }

  private static List<Pain> pains(Handle h, long athleteId, LocalDate from) {
    return h.createQuery("SELECT id, date, area, level, settled, refer FROM pain WHERE athlete_id = :athlete AND date >= :from ORDER BY date, id")
        .bind("athlete", athleteId)
        .bind("from", from.toString())
        .map((r, c) -> pain(r))
        .list();
  }

  @Override
  public void setGrowing(long athleteId, boolean growing, @Nullable LocalDate firstSession) {
    database.write(
        h ->
            h.createUpdate("INSERT INTO care (athlete_id, growing, first_session) VALUES (:athlete, :growing, :first)"
                        + " ON CONFLICT (athlete_id) DO UPDATE SET growing = excluded.growing, first_session = excluded.first_session")
                .bind("athlete", athleteId)
                .bind("growing", growing ? 1 : 0)
                .bind("first", firstSession == null ? null : firstSession.toString())
                .execute());
  }

  @Override
  public Pain addPain(long athleteId, Pain pain) {
    return database.write(
        h -> {
          long id =
              h.createUpdate(
                      "INSERT INTO pain (athlete_id, date, area, level, settled, refer)"
                          + " VALUES (:athlete, :date, :area, :level, :settled, :refer)")
                  .bind("athlete", athleteId)
                  .bind("date", pain.date().toString())
                  .bind("area", pain.area())
                  .bind("level", pain.level())
                  .bind("settled", pain.settled() == null ? null : (pain.settled() ? 1 : 0))
                  .bind("refer", pain.refer() ? 1 : 0)
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          boolean lasts = holds(h, athleteId).stream().anyMatch(hold -> hold.clearedOn() == null && !hold.from().isAfter(pain.date()));
          if (pain.refer() && !lasts) {
            openHold(athleteId, new MedicalHold(0, pain.date(), "Opened with a sign to stop and refer: " + pain.area() + ".", null, null));
          }
          return new Pain(id, pain.date(), pain.area(), pain.level(), pain.settled(), pain.refer());
        });
  }

  @Override
  public void setSettled(long athleteId, long painId, boolean settled) {
    database.write(
        h -> {
          int changed =
              h.createUpdate("UPDATE pain SET settled = :settled WHERE athlete_id = :athlete AND id = :id")
                  .bind("settled", settled ? 1 : 0)
                  .bind("athlete", athleteId)
                  .bind("id", painId)
                  .execute();
          if (changed == 0) {
            throw new RefusedException("Pain number " + painId + " is not in this athlete's list. Nothing was changed. Load the page again.");
          }
          return changed;
        });
  }

  @Override
  public MedicalHold openHold(long athleteId, MedicalHold hold) {
    String note = hold.note().strip();
    if (hold.clearedBy() != null) {
      throw new RefusedException("A hold that has ended cannot be opened. Open it first; the clinician ends it.");
    }
    if (note.length() > 300) {
      throw new RefusedException("The note of a hold has " + note.length() + " characters; at most 300 are kept. No diagnosis belongs in it.");
    }
    return database.write(
        h ->
            new MedicalHold(
                h.createUpdate("INSERT INTO medical_hold (athlete_id, from_date, note) VALUES (:athlete, :from, :note)")
                    .bind("athlete", athleteId)
                    .bind("from", hold.from().toString())
                    .bind("note", note)
                    .executeAndReturnGeneratedKeys()
                    .mapTo(Long.class)
                    .one(),
                hold.from(),
                note,
                null,
                null));
  }

  @Override
  public void endHold(long athleteId, long holdId, String clearedBy, LocalDate clearedOn) {
    String name = clearedBy.strip().replaceAll("\\s+", " ");
    if (name.isEmpty() || name.length() > 80) {
      throw new RefusedException(
          "A medical hold ends with the clinician's name, 1 to 80 characters, and a date; the name has " + name.length()
              + ". Nothing was changed: the hold lasts.");
    }
    database.write(
        h -> {
          MedicalHold hold =
              holds(h, athleteId).stream()
                  .filter(one -> one.id() == holdId)
                  .findFirst()
                  .orElseThrow(
                      () -> new RefusedException("Medical hold number " + holdId + " is not in this athlete's list. Nothing was changed."));
          if (hold.clearedOn() != null) {
            throw new RefusedException(
                "This hold was ended already by " + hold.clearedBy() + " from " + hold.clearedOn()
                    + " on, and stays as it is: a day too late stands until it comes. Open a new one if bounding has to stop again.");
          }
          MedicalHold ended = new MedicalHold(holdId, hold.from(), hold.note(), name, clearedOn);
          return h.createUpdate("UPDATE medical_hold SET cleared_by = :by, cleared_on = :on WHERE id = :id")
              .bind("by", ended.clearedBy())
              .bind("on", clearedOn.toString())
              .bind("id", holdId)
              .execute();
        });
  }

  /** All of an athlete, open and ended, oldest first. */
  static List<MedicalHold> holds(Handle h, long athleteId) {
    return h.createQuery(HOLDS + "WHERE athlete_id = :athlete ORDER BY from_date, id")
        .bind("athlete", athleteId)
        .map((r, c) -> hold(r))
        .list();
  }

  private static MedicalHold hold(ResultSet r) throws SQLException {
    return new MedicalHold(
        r.getLong("id"), LocalDate.parse(r.getString("from_date")), r.getString("note"), r.getString("cleared_by"), Columns.day(r, "cleared_on"));
  }

  @Override
  public void keep(GuardOverride override) {
    database.write(
        h ->
            h.createUpdate(
                    "INSERT INTO guard_override (athlete_id, date, rule, answer, said, reason)"
                        + " VALUES (:athlete, :date, :rule, :answer, :said, :reason)")
                .bind("athlete", override.athleteId())
                .bind("date", override.date().toString())
                .bind("rule", override.rule().name())
                .bind("answer", override.answer().name())
                .bind("said", override.said())
                .bind("reason", override.reason())
                .execute());
  }

  @Override
  public List<GuardOverride> overrides(long athleteId, int most) {
    return database.read(
        h ->
            h.createQuery(
                    "SELECT id, date, rule, answer, said, reason FROM guard_override"
                        + " WHERE athlete_id = :athlete ORDER BY date DESC, id DESC LIMIT :most")
                .bind("athlete", athleteId)
                .bind("most", most)
                .map(
                    (r, c) ->
                        new GuardOverride(
                            r.getLong("id"),
                            athleteId,
                            LocalDate.parse(r.getString("date")),
                            Columns.word(Finding.Rule.class, "rule", r.getString("rule")),
                            Columns.word(Answer.class, "answer", r.getString("answer")),
                            r.getString("said"),
                            r.getString("reason")))
                .list());
  }

  @Override
  public void keep(SessionRating rating) {
    database.write(
        h ->
            h.createUpdate(
                    "INSERT INTO session_rating (athlete_id, date, rating, minutes) VALUES (:athlete, :date, :rating, :minutes)"
                        + " ON CONFLICT (athlete_id, date) DO UPDATE SET rating = excluded.rating, minutes = excluded.minutes")
                .bind("athlete", rating.athleteId())
                .bind("date", rating.date().toString())
                .bind("rating", rating.rating())
                .bind("minutes", rating.minutes())
                .execute());
  }

  @Override
  public List<SessionRating> ratings(long athleteId, LocalDate from) {
    return database.read(
        h ->
            h.createQuery("SELECT date, rating, minutes FROM session_rating WHERE athlete_id = :athlete AND date >= :from ORDER BY date")
                .bind("athlete", athleteId)
                .bind("from", from.toString())
                .map(
                    (r, c) ->
                        new SessionRating(athleteId, LocalDate.parse(r.getString("date")), r.getDouble("rating"), r.getDouble("minutes")))
                .list());
  }

  @Override
  public GuardSettings guard() {
    return database.read(h -> GuardRows.read(SettingRows.read(h)));
  }

  @Override
  public void keep(GuardSettings settings) {
    database.write(
        h -> {
          GuardRows.keep(h, settings);
          return settings;
        });
  }

  private static Pain pain(ResultSet r) throws SQLException {
    Integer settled = Columns.whole(r, "settled");
    return new Pain(
        r.getLong("id"),
        LocalDate.parse(r.getString("date")),
        r.getString("area"),
        r.getInt("level"),
        Optional.ofNullable(settled).map(s -> s == 1).orElse(null),
        r.getBoolean("refer"));
  }
}
