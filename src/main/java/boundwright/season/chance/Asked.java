package boundwright.season.chance;

import boundwright.quantity.RefusedException;
import boundwright.season.Meet;
import boundwright.season.SeasonInput;
import boundwright.season.Venue;
import java.time.DayOfWeek;
import java.util.List;
import java.util.Locale;

/** Reads what is asked beside: {@code hour:PLACE:WEEKDAY} or {@code without:MEET}. */
public final class Asked {
  private Asked() {}

  /** As it was written. */
  public static WhatIf of(SeasonInput input, String written) {
    List<String> parts = List.of(written.strip().split(":", -1));
    if (parts.get(0).equals("hour") && parts.size() == 3) {
      Venue venue = input.venue(parts.get(1));
      return new WhatIf.MoreHours(venue.key(), venue.name(), day(parts.get(2)));
    }
    if (parts.get(0).equals("without") && parts.size() == 2) {
      Meet meet = input.meet(parts.get(1));
      return new WhatIf.OneMeetLess(meet.key(), meet.name());
    }
    throw new RefusedException("'" + written + "' cannot be asked. Write hour:PLACE:WEEKDAY, as hour:gym:tuesday, or without:MEET.");
  }

  private static DayOfWeek day(String word) {
    try {
      return DayOfWeek.valueOf(word.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new RefusedException("'" + word + "' is no day of the week. Write monday to sunday.", e);
    }
  }
}
