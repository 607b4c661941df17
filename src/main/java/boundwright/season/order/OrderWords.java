package boundwright.season.order;

import boundwright.athlete.Athlete;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.season.order.RunningOrder.Lay;
import java.time.Clock;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/** An order in a coach's words. */
public final class OrderWords {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter EXACT = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final String[] NUMBERS = {
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"
  };
  private static final String[] ORDINALS = {"", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"};
  private static final int MOST_NAMES = 4;

  private final SessionAsk ask;
  private final RunningOrder order;
  private final LocalTime begins;

  /** {@code begins} is when the first rep may start. */
  public OrderWords(SessionAsk ask, RunningOrder order, LocalTime begins) {
    this.ask = ask;
    this.order = order;
    this.begins = begins;
  }

  /** When the first rep may start, as the coach wrote it: {@code 17:05}. */
  public static LocalTime time(String written) {
    try {
      return LocalTime.parse(written.strip());
    } catch (DateTimeParseException e) {
      throw new RefusedException("The time '" + written + "' cannot be read. Write it as 17:05.", e);
    }
  }

  /** When the first rep may start if nobody says otherwise: this minute. */
  public static LocalTime now(Clock clock) {
    return LocalTime.now(clock).truncatedTo(ChronoUnit.MINUTES);
  }

  /** {@code 17:05} */
  public String minute(int seconds) {
    return TIME.format(begins.plusSeconds(seconds));
  }

  /** {@code 17:05:35} */
  public String second(int seconds) {
    return EXACT.format(begins.plusSeconds(seconds));
  }

  /** {@code Ends 17:42.} and what that is worth. */
  public String ends() {
    String said = "Ends " + minute(order.finish_s() + 59);
    int over = order.finish_s() - order.limit_s();
    if (over > 0) {
      return said + ": " + minutes(over) + " too late, and nothing more can be left out. Make the group smaller, or open another lane.";
    }
    return said + ". " + (order.proven() ? "No order ends sooner." : "At most " + seconds(order.finish_s() - order.least_s()) + " later than any order can.");
  }

  /** What is left out, a sentence each; empty if nothing is. */
  public List<String> drops() {
    List<String> out = new ArrayList<>(order.drops().stream().map(this::said).toList());
    if (!order.drops().isEmpty() && !order.level()) {
      out.add("The legs are less even so: balance them next time.");
    }
    return out;
  }

  private String said(Drop drop) {
    String what = ask.drills().get(drop.drill()).sequence().text();
    String who = who(drop);
    return switch (drop.kind()) {
      case CLOSED -> "Leave out " + what + who + ": no place is open for it.";
      case SET -> "Drop the " + ordinal(drop.set()) + " set of " + what + who + ".";
      case REP -> Notes.capital(number(drop.reps())) + (drop.reps() == 1 ? " rep" : " reps") + " of " + what + " less" + who + ".";
      case DRILL -> "Leave out " + what + who + ".";
      case NEW -> "Leave out " + what + ", new to them," + who + ".";
    };
  }

  private String who(Drop drop) {
    int all = ask.athletes().size();
    if (drop.athletes().size() == all) {
      return "";
    }
    List<Integer> same =
        IntStream.range(0, all).filter(a -> ask.athletes().get(a).parts().get(drop.drill()).steps() == drop.steps()).boxed().toList();
    if (drop.athletes().size() > 1 && same.equals(drop.athletes())) {
      return " for the " + number(same.size()) + " " + Athlete.fromSteps(drop.steps());
    }
    List<String> names = drop.athletes().stream().map(a -> ask.athletes().get(a).name()).toList();
    return names.size() <= MOST_NAMES
        ? " for " + String.join(", ", names)
        : " for " + String.join(", ", names.subList(0, MOST_NAMES - 1)) + " and " + number(names.size() - MOST_NAMES + 1) + " more";
  }

  /** {@code Pit: tape from 12.90 m to 13.60 m, Otis.} */
  public String said(Lay lay) {
    Double from = lay.from_m();
    String by = lay.by();
    return lay.place() + ": tape " + (from == null ? "at " : "from " + ask.unit().write(from) + " to ") + ask.unit().write(lay.to_m())
        + (by == null ? "" : ", " + by) + ".";
  }

  /** What lies before the first rep, a sentence for each place and hand: {@code Pit, before the first rep: tapes at 11.74 m, 13.20 m, Otis.} */
  public List<String> laid() {
    Map<String, List<String>> marks = new LinkedHashMap<>();
    order.tapes().stream()
        .filter(l -> l.from_m() == null)
        .sorted(Comparator.comparingDouble(Lay::to_m))
        .forEach(l -> marks.computeIfAbsent(l.place() + "\n" + (l.by() == null ? "" : l.by()), k -> new ArrayList<>()).add(ask.unit().write(l.to_m())));
    List<String> out = new ArrayList<>();
    marks.forEach(
        (key, at) -> {
          String[] of = key.split("\n", -1);
          out.add(
              of[0] + ", before the first rep: " + (at.size() == 1 ? "tape at " : "tapes at ") + String.join(", ", at)
                  + (of[1].isEmpty() ? "" : "; " + of[1]) + ".");
        });
    return out;
  }

  private static String number(int n) {
    return n < NUMBERS.length ? NUMBERS[n] : String.valueOf(n);
  }

  private static String ordinal(int n) {
    return n < ORDINALS.length ? ORDINALS[n] : n + "th";
  }

  private static String seconds(int s) {
    return s < 60 ? s + " s" : minutes(s);
  }

  private static String minutes(int s) {
    return Notes.counted((s + 59) / 60, "minute");
  }
}
