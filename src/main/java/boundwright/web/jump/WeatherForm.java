package boundwright.web.jump;

import boundwright.approach.weather.Weather;
import boundwright.quantity.RefusedException;
import boundwright.web.page.Form;
import io.javalin.http.Context;

/** Reads the fields that say the weather of a jump, a run or a day. */
public final class WeatherForm {
  private WeatherForm() {}

  /** What was written, nothing included. */
  static Weather read(Context ctx) {
    String wind = Form.text(ctx, "wind");
    String by = Form.text(ctx, "windBy");
    String warm = Form.text(ctx, "warm");
    String wet = Form.text(ctx, "wet");
    Weather.From from = by.isEmpty() ? null : Form.oneOf(Weather.From.class, "way of knowing the wind", by);
    Double along = wind.isEmpty() ? null : (Double) Form.number("wind", wind);
    if (along == null && from == Weather.From.GAUGE) {
      from = null; // the field stands on the gauge when nothing was chosen
    }
    if (!wet.isEmpty() && !wet.equals("wet") && !wet.equals("dry")) {
      throw new RefusedException("A runway is wet or dry, not '" + wet + "'. Choose one of them, or leave it open.");
    }
    return new Weather(along, from, warm.isEmpty() ? null : (Double) Form.number("temperature", warm), wet.isEmpty() ? null : (Boolean) wet.equals("wet"));
  }
}
