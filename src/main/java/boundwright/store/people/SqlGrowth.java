package boundwright.store.people;

import boundwright.athlete.growth.GrowthRepository;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.Measurement;
import boundwright.store.engine.Database;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Measured bodies in the database. */
public final class SqlGrowth implements GrowthRepository {
  private static final String MEASUREMENT = "SELECT id, athlete_id, date, height_m, sitting_m, mass_kg, measured_by FROM body_measurement";
  private static final String IN_ORDER = " ORDER BY date, id";
  /** Settings, with their units: centimetres a year, weeks. */
  private static final String FAST_KEY = "growth.fast";
  private static final String UNSURE_KEY = "growth.unsure";
  private static final String WEEKS_KEY = "growth.weeks";
  private static final String SPEED_UNIT = "cm/a";

  private final Database database;

  /** Keeps them in this database. */
  public SqlGrowth(Database database) {
    this.database = database;
  }

  @Override
  public List<Measurement> measurements(long athleteId) {
    return measurements(List.of(athleteId)).getOrDefault(athleteId, List.of());
  }

  @Override
  public Map<Long, List<Measurement>> measurements(List<Long> athletes) {
    if (athletes.isEmpty()) {
      return Map.of();
    }
    return database.read(h -> byAthlete(h.createQuery(MEASUREMENT + " WHERE athlete_id IN (<ids>)" + IN_ORDER).bindList("ids", athletes)));
  }

  @Override
  public Map<Long, List<Measurement>> everybody() {
    return database.read(h -> byAthlete(h.createQuery(MEASUREMENT + IN_ORDER)));
  }

  private static Map<Long, List<Measurement>> byAthlete(Query query) {
    Map<Long, List<Measurement>> out = new HashMap<>();
    query.map((r, c) -> out.computeIfAbsent(r.getLong("athlete_id"), id -> new ArrayList<>()).add(measurement(r))).list();
    return out;
  }

  @Override
  public Measurement add(long athleteId, Measurement m) {
    return database.write(
        h ->
            m.withId(
                h.createUpdate(
                        "INSERT INTO body_measurement (athlete_id, date, height_m, sitting_m, mass_kg, measured_by)"
                            + " VALUES (:athlete, :date, :height, :sitting, :mass, :by)")
                    .bind("athlete", athleteId)
                    .bind("date", m.date().toString())
                    .bind("height", m.height_m())
                    .bind("sitting", m.sitting_m())
                    .bind("mass", m.mass_kg())
                    .bind("by", m.by())
                    .executeAndReturnGeneratedKeys("id")
                    .mapTo(Long.class)
                    .one()));
  }

  @Override
  public boolean remove(long athleteId, long measurementId) {
    return database.write(
        h ->
            h.createUpdate("DELETE FROM body_measurement WHERE athlete_id = :athlete AND id = :id")
                    .bind("athlete", athleteId)
                    .bind("id", measurementId)
                    .execute()
                > 0);
  }

  @Override
  public GrowthSettings settings() {
    return database.read(
        h -> {
          GrowthSettings d = GrowthSettings.DEFAULT;
          Map<String, Double> kept = new HashMap<>();
          h.createQuery("SELECT key, number FROM setting WHERE key IN (<keys>)")
              .bindList("keys", List.of(FAST_KEY, UNSURE_KEY, WEEKS_KEY))
              .map((r, c) -> kept.put(r.getString("key"), r.getDouble("number")))
              .list();
          return new GrowthSettings(
              kept.getOrDefault(FAST_KEY, d.fast_cm_y()), kept.getOrDefault(UNSURE_KEY, d.unsure_cm_y()),
              kept.getOrDefault(WEEKS_KEY, (double) d.weeks()).intValue());
        });
  }

  @Override
  public void keep(GrowthSettings settings) {
    database.write(
        h -> put(h, FAST_KEY, settings.fast_cm_y(), SPEED_UNIT) + put(h, UNSURE_KEY, settings.unsure_cm_y(), SPEED_UNIT) + put(h, WEEKS_KEY, settings.weeks(), "wk"));
  }

  private static int put(Handle h, String key, double number, String unit) {
    return h.createUpdate(
            "INSERT INTO setting (key, number, unit) VALUES (:key, :number, :unit)"
                + " ON CONFLICT (key) DO UPDATE SET number = excluded.number, unit = excluded.unit, word = NULL")
        .bind("key", key)
        .bind("number", number)
        .bind("unit", unit)
        .execute();
  }

  private static Measurement measurement(ResultSet r) throws SQLException {
    return new Measurement(
        r.getLong("id"), LocalDate.parse(r.getString("date")), r.getDouble("height_m"), number(r, "sitting_m"), number(r, "mass_kg"), r.getString("measured_by"));
  }

  private static @Nullable Double number(ResultSet r, String column) throws SQLException {
    double value = r.getDouble(column);
    return r.wasNull() ? null : value;
  }
}
