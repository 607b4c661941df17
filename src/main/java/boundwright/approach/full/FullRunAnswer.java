package boundwright.approach.full;

import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How far an athlete will jump from more approach steps.
 *
 * @param kept distances of the athlete that were logged with their steps, oldest first
 * @param steps asked for
 * @param given_m the one jump that was asked about [m], or null for an athlete who is kept
 * @param base what is believed from the steps that the athlete has jumped from most, or null when nothing can be told
 * @param asked what is believed from the steps asked for, or null when nothing can be told
 * @param curve the same from every second number of steps that can be told, fewest first
 * @param weather what wind, warmth and wet do
 * @param missing why nothing can be told and what would change it, or null
 * @param guess that no jump of the squad from about so many steps is behind it, a sentence; or null
 * @param from what it rests on, in sentences
 */
public record FullRunAnswer(
    List<DistanceEntry> kept,
    int steps,
    @Nullable Double given_m,
    @Nullable FullRunForecast base,
    @Nullable FullRunForecast asked,
    List<FullRunForecast> curve,
    @Nullable WindEffect weather,
    @Nullable String missing,
    @Nullable String guess,
    String from) {
  /** Takes copies. */
  public FullRunAnswer {
    kept = List.copyOf(kept);
    curve = List.copyOf(curve);
  }

  /** The sentences for the coach: the distance from the steps asked for, or that the data cannot tell and what they need. */
  public String words(LengthUnit unit) {
    FullRunForecast shorter = base;
    FullRunForecast full = asked;
    if (shorter == null || full == null) {
      return "The data cannot tell. " + (missing == null ? "" : missing);
    }
    Estimate level = full.level_m();
    Estimate jump = full.jump_m();
    String average = unit.write(level.p05()) + " to " + unit.write(level.p95());
    String single =
        "A single jump lies between " + unit.write(jump.p05()) + " and " + unit.write(jump.p95()) + " nine times in ten." + (guess == null ? "" : " " + guess);
    return shorter.steps() == full.steps()
        ? "From " + full.steps() + " steps about " + average + " on average. " + single
        : unit.write(given_m == null ? shorter.level_m().p50() : given_m) + " from " + shorter.steps() + " steps is about " + average + " from " + full.steps() + ". " + single;
  }

  /** The sentence about wind and weather; only what was noted is spoken of. */
  public String weatherWords(LengthUnit unit) {
    WindEffect w = weather;
    if (w == null || (w.wind_m() == null && w.warmth_m() == null && w.wet_m() == null)) {
      return "No wind, temperature or wet runway is noted, so none is counted.";
    }
    StringBuilder out = new StringBuilder("In a jump of 13 m:");
    effect(out, w.wind_m(), "Each m/s of tail wind", unit, 1);
    effect(out, w.warmth_m(), "Ten degrees more", unit, 10);
    effect(out, w.wet_m(), "A wet runway", unit, 1);
    return out.toString().strip();
  }

  private static void effect(StringBuilder out, @Nullable Estimate e, String what, LengthUnit unit, double times) {
    if (e != null) {
      out.append(' ').append(what).append(" is worth ").append(signed(unit, times * e.p50())).append(" (").append(signed(unit, times * e.p05()))
          .append(" to ").append(signed(unit, times * e.p95())).append(WindEffect.told(e) ? ")." : "): the data cannot tell which way.");
    }
  }

  private static String signed(LengthUnit unit, double metres) {
    return (unit.round(metres) < 0 ? "-" : "") + unit.writeSmall(metres);
  }
}
