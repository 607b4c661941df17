package boundwright.store;

import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.Weather;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import org.jdbi.v3.core.statement.SqlStatement;

/** Weather as the columns of a row. */
final class WeatherRows {
  static final String COLUMNS = "wind_mps, wind_from, temperature_c, wet";
  static final String VALUES = ":wind, :from, :warm, :wet";

  private WeatherRows() {}

  static <S extends SqlStatement<S>> S bind(S statement, Weather w) {
    Weather.From from = w.from();
    Boolean wet = w.wet();
    return statement
        .bind("wind", w.wind())
        .bind("from", from == null ? null : from.name())
        .bind("warm", w.temperature_c())
        .bind("wet", wet == null ? null : (Integer) (wet ? 1 : 0));
  }

  static Weather read(ResultSet r) throws SQLException {
    String from = r.getString("wind_from");
    Integer wet = Columns.whole(r, "wet");
    return new Weather(
        Columns.number(r, "wind_mps"),
        from == null ? null : Columns.word(Weather.From.class, "way of knowing the wind", from),
        Columns.number(r, "temperature_c"),
        wet == null ? null : (Boolean) (wet != 0));
  }

  static DayWeather day(ResultSet r) throws SQLException {
    return new DayWeather(LocalDate.parse(r.getString("date")), read(r), r.getString("note"));
  }
}
