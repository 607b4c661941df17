package boundwright.meet.chance;

import boundwright.approach.full.FullRunAnswer;
import boundwright.athlete.Athlete;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Whether an athlete will reach a standard by a day.
 *
 * @param standard_m asked for [m]
 * @param by the last day
 * @param chance meet by meet, or null when nothing can be told
 * @param fullRun what is believed of the athlete's jumps
 * @param fouls chance of a foul that was taken
 * @param foulsOwn whether it is the athlete's own
 * @param wind how winds were taken, or null where they were not counted
 * @param missing why nothing can be told and what would change it, or null
 */
public record ChanceAnswer(
    double standard_m,
    LocalDate by,
    @Nullable StandardChance chance,
    FullRunAnswer fullRun,
    double fouls,
    boolean foulsOwn,
    @Nullable LikelyWind wind,
    @Nullable String missing) {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  /** The sentence for the coach. */
  public String words(LengthUnit unit) {
    StandardChance c = chance;
    if (c == null) {
      return "The data cannot tell. " + (missing == null ? "" : missing);
    }
    return inHundred(c.byThen()) + " to reach " + unit.write(standard_m) + " in the triple jump " + Athlete.fromSteps(fullRun.steps()) + " by " + DAY.format(by) + ", in " + Notes.counted(c.meets().size(), "meet") + ".";
  }

  /** What it rests on, in sentences. */
  public String from() {
    LikelyWind w = wind;
    return "The level wanders from meet to meet as it has so far, up as easily as down; training still to come is not counted. Fouls "
        + Math.round(100 * fouls) + " in 100" + (foulsOwn ? ", the athlete's own. " : ", as in long-jump finals, until the athlete's own are known. ")
        + (w == null ? "No wind is counted. " : "A mark in a wind above +2.0 m/s does not count. ") + (fullRun.guess() == null ? "" : fullRun.guess() + " ") + fullRun.from();
  }

  /** A chance in words; never none or all, which nobody can promise. */
  public static String inHundred(double chance) {
    return chance >= 0.995 ? "Over 99 in 100" : chance < 0.005 ? "Under 1 in 100" : Math.round(100 * chance) + " in 100";
  }
}
