package boundwright.season.why;

import boundwright.season.Away;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.Session;
import boundwright.season.Venue;
import boundwright.season.year.YearLine;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Which rule stands against something, in words. */
final class RuleWords {
  private final SeasonInput input;

  RuleWords(SeasonInput input) {
    this.input = input;
  }

  /** That a place is full on a day. */
  String full(int venue, int t) {
    Venue place = input.venues().get(venue);
    return place.name() + " takes " + place.athletes() + " at once and is full on " + input.day(t);
  }

  /** Which rule of the athlete's own line refuses something; empty if none does. */
  String refusal(YearLine line) {
    YearLine.Refusal r = line.refusal(0);
    if (r == null) {
      return "";
    }
    return switch (r.cause()) {
      case OWN_WEEKS -> "the seven days up to " + input.day(r.day()) + " would lie too far above the athlete's own weeks";
      case SPACING -> "hard sessions would come too close on " + input.day(r.day());
      case TAPER -> "the load would not fall far enough before the main meet on " + input.day(r.day());
    };
  }

  /** Why a day leaves no choice. */
  String fixed(Member m, int t, @Nullable Session session) {
    LocalDate day = input.day(t);
    if (session != null) {
      return input.meet(m, day).map(x -> "The meet " + x.name() + ".").orElse("It is over.");
    }
    LocalDate joins = m.joins();
    Optional<Away.Why> away = m.away(day);
    if (away.isPresent()) {
      return "Not there: " + away.get().label() + ".";
    }
    if (joins != null && day.isBefore(joins)) {
      return "Joins on " + joins + ".";
    }
    return m.days().contains(day.getDayOfWeek()) ? "No place is open that the limits allow." : "Not one of the athlete's days.";
  }
}
