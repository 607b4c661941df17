package boundwright.approach.weather;

import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What was noted of the weather of one jump, one run or one day; everything may be missing.
 *
 * @param wind along the runway [m/s], + from behind, -8 to 12; null when only its side or nothing is known
 * @param from how the wind is known; null when it is not
 * @param temperature_c of the air [degrees Celsius], -15 to 45, or null
 * @param wet whether the runway was wet, or null when not noted
 */
public record Weather(@Nullable Double wind, @Nullable From from, @Nullable Double temperature_c, @Nullable Boolean wet) {
  /** Nothing is known. */
  public static final Weather UNKNOWN = new Weather(null, null, null, null);
  /** Largest head wind and tail wind in which anybody jumps [m/s] (judgement). */
  public static final double MIN_WIND = -8;

  public static final double MAX_WIND = 12;
  /** How widely winds scatter along a runway [m/s] (judgement); what an estimate is drawn towards. */
  public static final double USUAL_WIND_SD = 1.5;
  /** Temperature that is looked at as usual [degrees Celsius] (judgement). */
  public static final double USUAL_TEMPERATURE_C = 20;

  /** How a wind is known. */
  public enum From {
    /** Measured by a gauge beside the runway. */
    GAUGE("by the gauge", 0.2),
    /** Estimated by the coach from a flag, a ribbon or the grass. */
    FLAG("by the flag", 1.0),
    /** Only known to be a head wind. */
    HEAD("against", Double.NaN),
    /** Only known to be a tail wind. */
    TAIL("from behind", Double.NaN);

    private final String label;
    private final double sd;

    From(String label, double sd) {
      this.label = label;
      this.sd = sd;
    }

    /** In words for the coach. */
    public String label() {
      return label;
    }

    /** Whether a strength belongs to it. */
    public boolean hasStrength() {
      return this == GAUGE || this == FLAG;
    }
  }

  /**
   * What is believed of a wind.
   *
   * @param mean [m/s], + from behind
   * @param sd how widely it may lie about that [m/s]
   */
  public record Believed(double mean, double sd) {
    /** Mean of its square [m2/s2]. */
    public double square() {
      return mean * mean + sd * sd;
    }
  }

  /** Refuses what nobody jumps in, and a strength without a way it is known. */
  public Weather {
    if (wind != null) {
      wind(wind);
      if (from == null) {
        from = From.GAUGE;
      } else if (!from.hasStrength()) {
        throw new RefusedException(
            String.format(Locale.ROOT, "A wind of %+.1f m/s says its side already. Say how it is known (gauge or flag), or leave the strength out.", wind));
      }
    } else if (from != null && from.hasStrength()) {
      throw new RefusedException("A wind " + from.label() + " needs its strength in m/s, + from behind. Say the strength, or only head or tail.");
    }
    if (temperature_c != null) {
      Limits.within("temperature", temperature_c, -15, 45, "degrees Celsius", "Outdoors 5 to 35 is usual.");
    }
  }

  /**
   * Wind along the runway [m/s], + from behind.
   *
   * @throws RefusedException if nobody jumps in it
   */
  public static double wind(double speed) {
    return Limits.within("wind", speed, MIN_WIND, MAX_WIND, "m/s", "A tail wind is +, a head wind is -.");
  }

  /** A wind by the gauge; null for none known. */
  public static Weather gauge(@Nullable Double wind) {
    return wind == null ? UNKNOWN : new Weather(wind, From.GAUGE, null, null);
  }

  /** Whether anything is known of the wind. */
  public boolean knowsWind() {
    return from != null;
  }

  /** Whether nothing at all is known. */
  public boolean isUnknown() {
    return from == null && temperature_c == null && wet == null;
  }

  /** The same, with what is missing taken from the day's. */
  public Weather or(Weather day) {
    boolean own = knowsWind();
    return new Weather(
        own ? wind : day.wind, own ? from : day.from, temperature_c != null ? temperature_c : day.temperature_c, wet != null ? wet : day.wet);
  }

  /**
   * What is believed of the wind: a noted one has the error of its way and is drawn towards still air as far as that error asks (regression
   * calibration: the exact mean and spread of a normal wind given a normal note); one whose side only is known is half a normal; an unknown one is
   * any wind (worked; the spreads are judgement).
   */
  public Believed believed() {
    double usual = USUAL_WIND_SD * USUAL_WIND_SD;
    if (from == null) {
      return new Believed(0, USUAL_WIND_SD);
    }
    if (wind == null) {
      double mean = USUAL_WIND_SD * Math.sqrt(2 / Math.PI);
      return new Believed(from == From.HEAD ? -mean : mean, USUAL_WIND_SD * Math.sqrt(1 - 2 / Math.PI));
    }
    double error = from.sd * from.sd;
    return new Believed(wind * usual / (usual + error), Math.sqrt(usual * error / (usual + error)));
  }

  /** In words, such as {@code +1.2 m/s by the gauge, 14 degrees, wet}; empty when nothing is known. */
  public String words() {
    StringBuilder out = new StringBuilder();
    if (from != null) {
      out.append(wind == null ? "wind " + from.label() : String.format(Locale.ROOT, "%+.1f m/s %s", wind, from.label()));
    }
    if (temperature_c != null) {
      out.append(out.isEmpty() ? "" : ", ").append(String.format(Locale.ROOT, "%.0f \u00b0C", temperature_c));
    }
    if (wet != null) {
      out.append(out.isEmpty() ? "" : ", ").append(wet ? "wet" : "dry");
    }
    return out.toString();
  }
}
