package boundwright.store;

import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.meet.Attempt;
import boundwright.meet.Beside;
import boundwright.meet.Combined;
import boundwright.meet.CombinedWind;
import boundwright.meet.Entrant;
import boundwright.meet.Hand;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetRepository;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSettings;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlStatement;
import org.jspecify.annotations.Nullable;

/** Meets with their lists and attempts in the database. */
final class SqlMeets implements MeetRepository {
  private static final String MEET =
      "SELECT id, name, date, event, combined_wind, competition, board_m, scoring, first_rounds, rounds, finalists, final_order, measure, trial_seconds FROM meet ";
  private static final String ENTRANT =
      "SELECT e.id, e.athlete_id, coalesce(a.name, e.label) AS called FROM meet_entrant e LEFT JOIN athlete a ON a.id = e.athlete_id ";
  private static final String ATTEMPT =
      "SELECT t.id, t.entrant_id, t.round, t.result, t.distance_m, t.wind_mps, t.gap_m, t.start_shift_m, t.note,"
          + " m.id AS meet_id, m.name AS meet, m.date, m.event FROM meet_attempt t"
          + " JOIN meet_entrant e ON e.id = t.entrant_id JOIN meet m ON m.id = e.meet_id ";
  /** Of attempts {@code t} those that count: of each entrant and round the newest, since an attempt is added and never changed. */
  static final String COUNTS =
      " AND t.id = (SELECT max(o.id) FROM meet_attempt o WHERE o.entrant_id = t.entrant_id AND o.round = t.round) ";

  private final Database database;
  private final BesideRows besides = new BesideRows();

  SqlMeets(Database database) {
    this.database = database;
  }

  @Override
  public List<MeetSheet> all() {
    return database.read(
        h -> h.createQuery("SELECT id FROM meet ORDER BY date DESC, id DESC").mapTo(Long.class).list().stream().map(id -> there(h, id)).toList());
  }

  @Override
  public List<MeetSheet> withAthlete(long athleteId, LocalDate from) {
    return database.read(
        h ->
            h.createQuery("SELECT id FROM meet WHERE date >= :from AND id IN (SELECT meet_id FROM meet_entrant WHERE athlete_id = :athlete) ORDER BY date, id")
                .bind("from", from.toString())
                .bind("athlete", athleteId)
                .mapTo(Long.class)
                .list()
                .stream()
                .map(id -> there(h, id))
                .toList());
  }

  @Override
  public Optional<MeetSheet> byId(long meetId) {
    return database.read(h -> byId(h, meetId));
  }

  private static Optional<MeetSheet> byId(Handle h, long meetId) {
    List<Entrant> entrants = entrants(h, meetId);
    List<KeptAttempt> attempts =
        h.createQuery(ATTEMPT + "WHERE e.meet_id = :meet" + COUNTS + "ORDER BY t.id")
            .bind("meet", meetId)
            .map((r, c) -> attempt(r, called(entrants, r.getLong("entrant_id")), JumpRows.event(r)))
            .list();
    return h.createQuery(MEET + "WHERE id = :meet").bind("meet", meetId).map((r, c) -> sheet(r, entrants, attempts)).findOne();
  }

  private static MeetSheet there(Handle h, long meetId) {
    return byId(h, meetId)
        .orElseThrow(() -> new RefusedException("Meet number " + meetId + " is not in the store (any more). Nothing was changed. Load the list again."));
  }

  private static List<Entrant> entrants(Handle h, long meetId) {
    Set<String> taken = new HashSet<>();
    h.createQuery("SELECT a.name FROM meet_entrant e JOIN athlete a ON a.id = e.athlete_id WHERE e.meet_id = :meet")
        .bind("meet", meetId)
        .mapTo(String.class)
        .forEach(name -> taken.add(SqlAthletes.key(name)));
    return h.createQuery(ENTRANT + "WHERE e.meet_id = :meet ORDER BY e.id")
        .bind("meet", meetId)
        .map((r, c) -> entrant(r, taken))
        .list();
  }

  /** An athlete who was renamed to what a rival is called must not hide either of them. */
  private static Entrant entrant(ResultSet r, Set<String> squad) throws SQLException {
    String name = r.getString("called");
    long athlete = r.getLong("athlete_id");
    boolean rival = r.wasNull();
    boolean twice = rival && squad.contains(SqlAthletes.key(name));
    return new Entrant(r.getLong("id"), rival ? null : (Long) athlete, twice ? shortened(name) + " (rival)" : name);
  }

  private static String shortened(String name) {
    return name.length() > 72 ? name.substring(0, 72) : name;
  }

  private static String called(List<Entrant> entrants, long id) {
    return entrants.stream().filter(e -> e.id() == id).findFirst().orElseThrow().name();
  }

  @Override
  public MeetSheet add(MeetSheet meet) {
    return database.write(
        h -> {
          long id =
              bind(
                      h.createUpdate(
                          "INSERT INTO meet (name, date, event, combined_wind, competition, board_m, scoring, first_rounds, rounds, finalists, final_order,"
                              + " measure, trial_seconds) VALUES (:name, :date, :event, :wind, :competition, :board, :scoring, :first, :rounds, :finalists,"
                              + " :order, :measure, :seconds)"),
                      meet)
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          meet.entrants().forEach(e -> enter(id, e));
          return there(h, id);
        });
  }

  @Override
  public void update(MeetSheet meet) {
    database.write(
        h -> {
          MeetSheet before = there(h, meet.id());
          if (before.event() != meet.event() && !before.attempts().isEmpty()) {
            throw new RefusedException(
                before.name() + " is a meet in the " + before.event().label() + " and has attempts, so its event stays. Make a new meet for the other.");
          }
          return bind(
                  h.createUpdate(
                      "UPDATE meet SET name = :name, date = :date, event = :event, combined_wind = :wind, competition = :competition, board_m = :board, scoring = :scoring,"
                          + " first_rounds = :first, rounds = :rounds, finalists = :finalists, final_order = :order, measure = :measure,"
                          + " trial_seconds = :seconds WHERE id = :id"),
                  meet)
              .bind("id", meet.id())
              .execute();
        });
  }

  private static <S extends SqlStatement<S>> S bind(S statement, MeetSheet meet) {
    MeetRules rules = meet.rules();
    Scoring scoring = meet.scoring();
    Combined part = rules.combined();
    return statement
        .bind("name", meet.name())
        .bind("date", meet.date().toString())
        .bind("event", meet.event().name())
        .bind("wind", part == null ? null : part.wind().name())
        .bind("competition", meet.competition())
        .bind("board", meet.board_m())
        .bind("scoring", scoring == null ? null : scoring.name())
        .bind("first", rules.firstRounds())
        .bind("rounds", rules.rounds())
        .bind("finalists", rules.finalists())
        .bind("order", rules.order().name())
        .bind("measure", rules.measure().name())
        .bind("seconds", rules.trialSeconds());
  }

  @Override
  public void remove(long meetId) {
    database.write(h -> h.createUpdate("DELETE FROM meet WHERE id = :id").bind("id", meetId).execute());
  }

  @Override
  public Entrant enter(long meetId, Entrant entrant) {
    return database.write(
        h -> {
          MeetSheet meet = there(h, meetId);
          Long athlete = entrant.athleteId();
          String name = athlete == null ? entrant.name() : name(h, athlete);
          if (meet.entrants().stream().anyMatch(e -> SqlAthletes.key(e.name()).equals(SqlAthletes.key(name)))) {
            throw new RefusedException(
                name + " stands on the list of " + meet.name() + " already. Each stands on it once; give a rival another label, such as a bib number.");
          }
          if (meet.entrants().size() >= 60) {
            throw new RefusedException("The list of " + meet.name() + " has 60 names; that is the limit. Make a second meet for the others.");
          }
          long id =
              h.createUpdate("INSERT INTO meet_entrant (meet_id, athlete_id, label) VALUES (:meet, :athlete, :label)")
                  .bind("meet", meetId)
                  .bind("athlete", athlete)
                  .bind("label", athlete == null ? name : null)
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          return new Entrant(id, athlete, name);
        });
  }

  private static String name(Handle h, long athlete) {
    return h.createQuery("SELECT name FROM athlete WHERE id = :id")
        .bind("id", athlete)
        .mapTo(String.class)
        .findOne()
        .orElseThrow(() -> new RefusedException("This athlete is not in the store (any more). Nothing was kept. Load the squad again and pick the athlete."));
  }

  @Override
  public void withdraw(long meetId, long entrantId) {
    database.write(
        h -> {
          MeetSheet meet = there(h, meetId);
          Entrant who = onTheList(meet, entrantId);
          if (meet.attempts().stream().anyMatch(a -> a.entrantId() == entrantId)) {
            throw new RefusedException(
                who.name() + " has attempts in " + meet.name() + " and stays on the list. Take the attempts out first, or enter a pass.");
          }
          return h.createUpdate("DELETE FROM meet_entrant WHERE id = :id").bind("id", entrantId).execute();
        });
  }

  private static Entrant onTheList(MeetSheet meet, long entrantId) {
    return meet.entrant(entrantId)
        .orElseThrow(() -> new RefusedException("Number " + entrantId + " is not on the list of " + meet.name() + ". Nothing was kept. Load the meet again."));
  }

  @Override
  public KeptAttempt add(long meetId, long entrantId, Attempt attempt, String note) {
    return add(meetId, entrantId, attempt, note, Hand.seeingAll(null));
  }

  @Override
  public KeptAttempt add(long meetId, long entrantId, Attempt attempt, String note, Hand hand) {
    return database.write(
        h -> {
          MeetSheet meet = there(h, meetId);
          Attempt a = attempt.of(onTheList(meet, entrantId).name());
          KeptAttempt stands = meet.standing(entrantId, a.round()).orElse(null);
          if (stands != null && meet.unseen(stands, hand)) {
            if (!stands.attempt().equals(a)) {
              besides.keep(h, new KeptAttempt(0, entrantId, a, note), hand.at());
            }
            return stands;
          }
          return added(meetId, entrantId, attempt, note, hand.at());
        });
  }

  @Override
  public List<Beside> besides(long meetId) {
    return database.read(h -> byId(h, meetId).map(m -> besides.of(h, m)).orElse(List.of()));
  }

  @Override
  public void choose(long meetId, long besideId, boolean holds) {
    database.write(
        h -> {
          Beside chosen = besides.take(h, there(h, meetId), besideId);
          if (holds) {
            KeptAttempt kept = chosen.kept();
            added(meetId, kept.entrantId(), kept.attempt(), kept.note(), chosen.at());
          }
          return holds;
        });
  }

  private KeptAttempt added(long meetId, long entrantId, Attempt attempt, String note, @Nullable Instant at) {
    return database.write(
        h -> {
          MeetSheet meet = there(h, meetId);
          Attempt a = attempt.of(onTheList(meet, entrantId).name());
          // asks the rules before anything is kept
          meet.meet().with(a);
          KeptAttempt kept = new KeptAttempt(0, entrantId, a, note);
          long id =
              h.createUpdate(
                      "INSERT INTO meet_attempt (entrant_id, round, result, distance_m, wind_mps, gap_m, start_shift_m, note, entered_at)"
                          + " VALUES (:entrant, :round, :result, :distance, :wind, :gap, :shift, :note, :at)")
                  .bind("at", at == null ? null : at.toString())
                  .bind("entrant", entrantId)
                  .bind("round", a.round())
                  .bind("result", a.result().name())
                  .bind("distance", a.distance_m())
                  .bind("wind", a.wind())
                  .bind("gap", a.gap_m())
                  .bind("shift", a.startShift_m())
                  .bind("note", kept.note())
                  .executeAndReturnGeneratedKeys()
                  .mapTo(Long.class)
                  .one();
          return new KeptAttempt(id, entrantId, a, kept.note());
        });
  }

  @Override
  public Optional<KeptAttempt> undo(long meetId) {
    return database.write(
        h -> {
          Optional<KeptAttempt> last = there(h, meetId).attempts().stream().reduce((before, after) -> after);
          last.ifPresent(a -> h.createUpdate("DELETE FROM meet_attempt WHERE id = :id").bind("id", a.id()).execute());
          return last;
        });
  }

  @Override
  public void removeAttempt(long meetId, long attemptId) {
    database.write(
        h ->
            h.createUpdate(
                    "DELETE FROM meet_attempt WHERE (entrant_id, round) IN (SELECT t.entrant_id, t.round FROM meet_attempt t"
                        + " JOIN meet_entrant e ON e.id = t.entrant_id WHERE t.id = :id AND e.meet_id = :meet)")
                .bind("id", attemptId)
                .bind("meet", meetId)
                .execute());
  }

  @Override
  public List<AthleteAttempt> attemptsOf(long athleteId) {
    return database.read(
        h -> {
          String name = h.createQuery("SELECT name FROM athlete WHERE id = :id").bind("id", athleteId).mapTo(String.class).findOne().orElse("");
          return h.createQuery(
                  ATTEMPT + "WHERE e.athlete_id = :athlete" + COUNTS + "ORDER BY m.date, m.id, t.round, t.id")
              .bind("athlete", athleteId)
              .map(
                  (r, c) ->
                      new AthleteAttempt(
                          r.getLong("meet_id"), r.getString("meet"), LocalDate.parse(r.getString("date")), attempt(r, name, JumpRows.event(r))))
              .list();
        });
  }

  @Override
  public MeetSettings settings() {
    return database.read(h -> MeetRows.read(SettingRows.read(h)));
  }

  @Override
  public void keep(MeetSettings settings) {
    database.write(
        h -> {
          MeetRows.keep(h, settings);
          return settings;
        });
  }

  private static MeetSheet sheet(ResultSet r, List<Entrant> entrants, List<KeptAttempt> attempts) throws SQLException {
    return new MeetSheet(
        r.getLong("id"),
        r.getString("name"),
        LocalDate.parse(r.getString("date")),
        r.getString("competition"),
        r.getDouble("board_m"),
        scoring(r.getString("scoring")),
        new MeetRules(
            JumpRows.event(r),
            combined(r),
            r.getInt("first_rounds"),
            r.getInt("rounds"),
            r.getInt("finalists"),
            Columns.word(MeetRules.FinalOrder.class, "order of the last rounds", r.getString("final_order")),
            Columns.word(MeasureRule.class, "rule of measuring", r.getString("measure")),
            r.getInt("trial_seconds")),
        entrants,
        attempts);
  }

  private static @Nullable Combined combined(ResultSet r) throws SQLException {
    String wind = r.getString("combined_wind");
    Scoring scoring = scoring(r.getString("scoring"));
    CombinedTable table = scoring == null ? null : scoring.combined();
    return wind == null || table == null ? null : new Combined(table, Columns.word(CombinedWind.class, "rule of the wind", wind));
  }

  private static @Nullable Scoring scoring(@Nullable String word) {
    return word == null ? null : Columns.word(Scoring.class, "table of points", word);
  }

  static KeptAttempt attempt(ResultSet r, String athlete, Event event) throws SQLException {
    return new KeptAttempt(
        r.getLong("id"),
        r.getLong("entrant_id"),
        new Attempt(
            event,
            athlete,
            r.getInt("round"),
            Columns.word(Attempt.Result.class, "result of an attempt", r.getString("result")),
            Columns.number(r, "distance_m"),
            Columns.number(r, "wind_mps"),
            Columns.number(r, "gap_m"),
            r.getDouble("start_shift_m")),
        r.getString("note"));
  }
}
