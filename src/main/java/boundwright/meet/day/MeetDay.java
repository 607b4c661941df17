package boundwright.meet.day;

import boundwright.approach.weather.Weather;
import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.quantity.Limits;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The times of a meet's day and the wind that the coach expects.
 *
 * @param meetId which meet
 * @param starts first attempt of the competition
 * @param callRoom_min how long before that the call room closes [min], 0 to 120
 * @param warmUp_min how long the warm-up is [min], 10 to 150
 * @param wind likely along the runway [m/s], + from behind, or null when nothing is expected
 * @param windGive the wind lies so near to that nine times in ten [m/s], 0 to 8
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record MeetDay(
    long meetId, LocalTime starts, int callRoom_min, int warmUp_min, @Nullable Double wind, double windGive, String note) {
  /** Call room half an hour before, an hour of warm-up (common practice; editions and levels differ). */
  public static final int USUAL_CALL_ROOM_MIN = 30;

  public static final int USUAL_WARM_UP_MIN = 60;
  /** A wind told the evening before is off by so much (judgement). */
  public static final double USUAL_GIVE = 2;
  /** Where the times come from. */
  public static final Source SOURCE = JumpSources.WARM_UP;

  /** Refuses what is no day. */
  public MeetDay {
    Limits.count("Minutes from the call room to the start", callRoom_min, 0, 120, "30 is usual.");
    Limits.count("Minutes of warm-up", warmUp_min, 10, 150, "60 is usual.");
    if (wind != null) {
      Weather.wind(wind);
    }
    Limits.within("doubt of the wind", windGive, 0, 8, "m/s", "2 is usual.");
    note = Notes.checked(note);
    if (callRoom_min + warmUp_min > starts.toSecondOfDay() / 60) {
      throw new RefusedException(
          "A start at " + starts + " with " + warmUp_min + " minutes of warm-up and the call room " + callRoom_min
              + " minutes before begins on the day before. Check the start, or shorten them.");
    }
  }

  /** A time of the day as written, such as {@code 14:30}. */
  public static LocalTime time(String written) {
    String plain = written.strip();
    try {
      return LocalTime.parse(plain.length() == 4 ? "0" + plain : plain);
    } catch (DateTimeParseException e) {
      throw new RefusedException(String.format(Locale.ROOT, "The time '%s' is none. Write hours and minutes, as in 14:30.", plain), e);
    }
  }
}
