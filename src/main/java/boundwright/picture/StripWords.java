package boundwright.picture;

import boundwright.athlete.Athlete;
import boundwright.flight.Forecast;
import boundwright.footfall.Flight;
import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Window;
import java.util.stream.Collectors;

/** The strip in words, for whoever cannot see it. */
public final class StripWords {
  private final MarkAdvice advice;
  private final Forecast forecast;
  private final LengthUnit unit;
  private final boolean flat;

  public StripWords(MarkAdvice advice, LengthUnit unit, boolean flat) {
    this.advice = advice;
    this.forecast = advice.forecast();
    this.unit = unit;
    this.flat = flat;
  }

  /** {@code RRL x2 from 4 steps: take-off mark 12.35 m from the sand}. */
  public String title() {
    String drill = forecast.sequence().text() + " " + Athlete.fromSteps(forecast.approachSteps());
    return flat
        ? drill + ", on the flat"
        : drill + ": take-off mark " + unit.write(advice.markToSand_m()) + " from the sand";
  }

  public String said() {
    StringBuilder out = new StringBuilder("The runway from above, travel to the right. ");
    if (forecast.approachSteps() > 0) {
      out.append("Start mark ").append(unit.write(advice.startToMark().p50())).append(" before the take-off mark. ");
    }
    Window window = advice.window();
    if (!flat && window == null) {
      out.append("No take-off mark works. ");
    } else if (!flat && window != null) {
      out.append("The tape may lie from ").append(unit.write(window.min_m())).append(" to ")
          .append(unit.write(window.max_m())).append(" from the sand. ");
    }
    out.append(forecast.sequence().count(Foot.RIGHT)).append(" contacts right (filled), ")
        .append(forecast.sequence().count(Foot.LEFT)).append(" left (outlined). Flights: ")
        .append(forecast.sequence().flights().stream().map(Flight::kind).map(k -> k.label()).collect(Collectors.joining(", ")))
        .append(". ");
    Estimate landing = forecast.landing();
    out.append("Landing ").append(unit.write(landing.p50())).append(" from the take-off mark, nine times in ten between ")
        .append(unit.write(landing.p05())).append(" and ").append(unit.write(landing.p95())).append('.');
    return out.toString();
  }
}
