package boundwright.store.people;

import boundwright.athlete.person.Consent;
import boundwright.athlete.person.EndAge;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.PersonRepository;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Sex;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Birth dates and answers in the database. */
public final class SqlPeople implements PersonRepository {
  private static final String PERSON = "SELECT athlete_id, born, sex FROM person";
  private static final String CONSENT = "SELECT id, athlete_id, scope, may, said_on, said_by, holds_until, withdrawn FROM consent";
  private static final String IN_ORDER = " ORDER BY said_on, id";
  /** Years of age, 0 for none. */
  private static final String AGE_KEY = "consent.end_age";

  private final Database database;

  /** Keeps them in this database. */
  public SqlPeople(Database database) {
    this.database = database;
  }

  @Override
  public Map<Long, Person> people() {
    return database.read(h -> byAthlete(h.createQuery(PERSON)));
  }

  @Override
  public Map<Long, Person> people(List<Long> athletes) {
    return athletes.isEmpty() ? Map.of() : database.read(h -> byAthlete(h.createQuery(PERSON + " WHERE athlete_id IN (<ids>)").bindList("ids", athletes)));
  }

  private static Map<Long, Person> byAthlete(Query query) {
    Map<Long, Person> out = new HashMap<>();
    query.map((r, c) -> out.put(r.getLong("athlete_id"), person(r))).list();
    return out;
  }

  @Override
  public Person person(long athleteId) {
    return database.read(
        h -> h.createQuery(PERSON + " WHERE athlete_id = :athlete").bind("athlete", athleteId).map((r, c) -> person(r)).findOne().orElse(Person.UNKNOWN));
  }

  @Override
  public void keep(long athleteId, Person person) {
    database.write(
        h -> {
          h.createUpdate("DELETE FROM person WHERE athlete_id = :athlete").bind("athlete", athleteId).execute();
          if (person.equals(Person.UNKNOWN)) {
            return 0;
          }
          return h.createUpdate("INSERT INTO person (athlete_id, born, sex) SELECT id, :born, :sex FROM athlete WHERE id = :athlete")
              .bind("athlete", athleteId)
              .bind("born", text(person.born()))
              .bind("sex", person.sex() == null ? null : person.sex().name())
              .execute();
        });
  }

  @Override
  public List<Consent> said() {
    return database.read(h -> h.createQuery(CONSENT + IN_ORDER).map((r, c) -> consent(r)).list());
  }

  @Override
  public List<Consent> said(long athleteId) {
    return database.read(
        h -> h.createQuery(CONSENT + " WHERE athlete_id = :athlete" + IN_ORDER).bind("athlete", athleteId).map((r, c) -> consent(r)).list());
  }

  @Override
  public void add(Consent consent) {
    database.write(
        h ->
            h.createUpdate(
                    "INSERT INTO consent (athlete_id, scope, may, said_on, said_by, holds_until, withdrawn)"
                        + " SELECT id, :scope, :may, :on, :by, :until, :withdrawn FROM athlete WHERE id = :athlete")
                .bind("athlete", consent.athleteId())
                .bind("scope", consent.scope().name())
                .bind("may", consent.may() ? 1 : 0)
                .bind("on", consent.on().toString())
                .bind("by", consent.by())
                .bind("until", text(consent.until()))
                .bind("withdrawn", text(consent.withdrawn()))
                .execute());
  }

  @Override
  public void withdraw(long consentId, LocalDate from) {
    database.write(
        h -> h.createUpdate("UPDATE consent SET withdrawn = :from WHERE id = :id").bind("from", from.toString()).bind("id", consentId).execute());
  }

  @Override
  public EndAge endAge() {
    int years = database.read(h -> SettingRows.read(h).whole(AGE_KEY, EndAge.DEFAULT.years()));
    return List.of(EndAge.values()).stream().filter(a -> a.years() == years).findFirst().orElse(EndAge.DEFAULT);
  }

  @Override
  public void keep(EndAge age) {
    database.write(
        h -> {
          SettingRows.keep(h, AGE_KEY, age.years(), "a");
          return age;
        });
  }

  private static Person person(ResultSet r) throws SQLException {
    String sex = r.getString("sex");
    return new Person(Columns.day(r, "born"), sex == null ? null : Sex.valueOf(sex));
  }

  private static Consent consent(ResultSet r) throws SQLException {
    return new Consent(
        r.getLong("id"), r.getLong("athlete_id"), Scope.valueOf(r.getString("scope")), r.getInt("may") == 1, LocalDate.parse(r.getString("said_on")),
        r.getString("said_by"), Columns.day(r, "holds_until"), Columns.day(r, "withdrawn"));
  }

  private static @Nullable String text(@Nullable LocalDate day) {
    return day == null ? null : day.toString();
  }
}
