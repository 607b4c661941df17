package boundwright.store.people;

import boundwright.athlete.growth.GrowthRepository;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.Measurement;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.statement.Query;

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
          SettingRows kept = SettingRows.read(h);
          return new GrowthSettings(kept.number(FAST_KEY, d.fast_cm_y()), kept.number(UNSURE_KEY, d.unsure_cm_y()), kept.whole(WEEKS_KEY, d.weeks()));
        });
  }

  @Override
  public void keep(GrowthSettings settings) {
    database.write(
        h -> {
          SettingRows.keep(h, FAST_KEY, settings.fast_cm_y(), SPEED_UNIT);
          SettingRows.keep(h, UNSURE_KEY, settings.unsure_cm_y(), SPEED_UNIT);
          SettingRows.keep(h, WEEKS_KEY, settings.weeks(), "wk");
          return settings;
        });
  }

  private static Measurement measurement(ResultSet r) throws SQLException {
    return new Measurement(
        r.getLong("id"), LocalDate.parse(r.getString("date")), r.getDouble("height_m"), Columns.number(r, "sitting_m"), Columns.number(r, "mass_kg"), r.getString("measured_by"));
  }
}
