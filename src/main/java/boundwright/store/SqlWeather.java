package boundwright.store;

import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.WeatherLog;
import boundwright.store.engine.Database;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The weather of days in the database. */
final class SqlWeather implements WeatherLog {
  private static final String DAY = "SELECT date, " + WeatherRows.COLUMNS + ", note FROM day_weather ";

  private final Database database;

  SqlWeather(Database database) {
    this.database = database;
  }

  @Override
  public void keep(DayWeather day) {
    database.write(
        h ->
            WeatherRows.bind(
                    h.createUpdate(
                        "INSERT INTO day_weather (date, " + WeatherRows.COLUMNS + ", note) VALUES (:date, " + WeatherRows.VALUES + ", :note)"
                            + " ON CONFLICT (date) DO UPDATE SET wind_mps = excluded.wind_mps, wind_from = excluded.wind_from,"
                            + " temperature_c = excluded.temperature_c, wet = excluded.wet, note = excluded.note"),
                    day.weather())
                .bind("date", day.date().toString())
                .bind("note", day.note())
                .execute());
  }

  @Override
  public List<DayWeather> days() {
    return database.read(h -> h.createQuery(DAY + "ORDER BY date").map((r, c) -> WeatherRows.day(r)).list());
  }

  @Override
  public Optional<DayWeather> remove(LocalDate date) {
    return database.write(
        h -> {
          Optional<DayWeather> there =
              h.createQuery(DAY + "WHERE date = :date").bind("date", date.toString()).map((r, c) -> WeatherRows.day(r)).findOne();
          h.createUpdate("DELETE FROM day_weather WHERE date = :date").bind("date", date.toString()).execute();
          return there;
        });
  }
}
