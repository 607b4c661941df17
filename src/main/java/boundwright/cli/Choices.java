package boundwright.cli;

import boundwright.athlete.Facility;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.jump.Event;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.quantity.WrittenDay;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkSettings;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads the words that an option can take, in the spelling that files use too. */
public final class Choices {
  private Choices() {}

  static Surface surface(String written) {
    return choice("surface", written, List.of(Surface.values()), Surface::label);
  }

  /** Triple jump where nothing was written. */
  static Event event(@Nullable String written) {
    return written == null ? Event.TRIPLE_JUMP : choice("event", written, List.of(Event.values()), Event::label);
  }

  static Outcome outcome(String written) {
    return choice("outcome", written, List.of(Outcome.values()), Outcome::label);
  }

  /** One of a list by its label, in any case, with spaces or hyphens. */
  public static <T> T choice(String what, String written, List<T> all, Function<T, String> label) {
    String plain = written.strip().toLowerCase(Locale.ROOT).replaceAll("[-_\\s]+", " ");
    return all.stream()
        .filter(one -> label.apply(one).toLowerCase(Locale.ROOT).replaceAll("[-_\\s]+", " ").equals(plain))
        .findFirst()
        .orElseThrow(
            () ->
                new RefusedException(
                    "The " + what + " '" + written.strip() + "' is not known. Use one of: "
                        + String.join(", ", all.stream().map(label).map(l -> l.contains(",") ? '"' + l + '"' : l).toList()) + "."));
  }

  /** The coach's settings with what was asked on the command line in place of what is kept; nothing is stored. */
  static CoachSettings settings(
      CoachSettings kept, UnitOption unit, @Nullable Double chance, @Nullable String surface) {
    MarkSettings marks = kept.marks();
    Facility place = kept.facility();
    return new CoachSettings(
        unit.in(kept),
        chance == null ? marks : new MarkSettings(chance, marks.sandMargin_m(), marks.clearMargin_m()),
        surface == null
            ? place
            : new Facility(place.name(), place.runway_m(), place.pit_m(), place.flat_m(), surface(surface)),
        kept.setContacts());
  }

  /** The day written so, or today; it may not lie in the future. */
  public static LocalDate day(@Nullable String written, Surroundings s) {
    LocalDate day = anyDay(written, s);
    if (day.isAfter(s.today())) {
      throw new RefusedException("The day " + written + " has not come yet; today is " + s.today() + ".");
    }
    return day;
  }

  /** The day written so, as {@link WrittenDay} reads it, or today. */
  public static LocalDate anyDay(@Nullable String written, Surroundings s) {
    return written == null ? s.today() : WrittenDay.read(written);
  }

  /** A length by hand, or null when it was not given. */
  static @Nullable Double length(LengthUnit unit, String what, @Nullable String written) {
    return written == null ? null : (Double) unit.read(what, written);
  }
}
