package boundwright.season.chance;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Locale;

/** Something that is asked about the same simulated seasons. */
public sealed interface WhatIf {
  /** In a few words. */
  String said();

  /**
   * One more hour a week at a place, on a day of its own: who missed a session of bounding in the week before it makes it up, and who has
   * fewer of them in a week than wanted gets one, as far as places and limits allow.
   *
   * @param venue key of the place
   * @param name as the coach calls it
   * @param day of the week
   */
  record MoreHours(String venue, String name, DayOfWeek day) implements WhatIf {
    @Override
    public String said() {
      String d = day.name();
      return "One more hour a week: " + name + ", " + d.charAt(0) + d.substring(1).toLowerCase(Locale.ROOT);
    }

    boolean on(long epochDay) {
      return LocalDate.ofEpochDay(epochDay).getDayOfWeek() == day;
    }
  }

  /**
   * One meet less for all to whom it is not a main meet: its place is taken by a session in the sand in its week, where there is a day.
   *
   * @param meet its key
   * @param name as the coach calls it
   */
  record OneMeetLess(String meet, String name) implements WhatIf {
    @Override
    public String said() {
      return "One meet less: " + name;
    }
  }

  /** Nothing is different: for the law that two answers about the same seasons are zero apart. */
  record Nothing() implements WhatIf {
    @Override
    public String said() {
      return "Nothing changed";
    }
  }
}
