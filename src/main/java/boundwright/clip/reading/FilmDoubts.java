package boundwright.clip.reading;

import boundwright.clip.contact.Contact;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What the contacts themselves say against the film: that it plays slower than it was filmed, that it shows a walk, a treadmill. */
public final class FilmDoubts {
  /** Said of a film in which a standing foot slides. */
  public static final String SLIDES =
      "The feet slide back while they stand: a treadmill, or a camera that travels along. Feet and times are read, lengths and speeds are not.";

  private static final double G = 9.81;
  /** Slowed by so much at least before it is said: the scale by the athlete's size is good to a tenth or so (judgement). */
  private static final double SLOWED = 1.5;
  /** So many flights are needed. */
  private static final int FEWEST = 2;

  private FilmDoubts() {}

  static List<String> of(List<ReadContact> contacts, List<ReadFlight> flights, Setup setup, boolean stays) {
    List<String> out = new ArrayList<>();
    int walked = 0;
    for (int i = 0; i + 1 < contacts.size(); i++) {
      Contact a = contacts.get(i).contact();
      Contact b = contacts.get(i + 1).contact();
      walked += a.toeOff_s() != null && b.touchdown_s() != null && b.touchdown_s().p50() < a.toeOff_s().p50() ? 1 : 0;
    }
    if (walked >= FEWEST && 2 * walked > flights.size()) {
      out.add("This is a walk: the next foot is down before the last is up. It is not a rep.");
    } else if (stays) {
      // a camera that is not followed moves up and down with the hand
      String slow = slowed(flights, setup);
      if (slow != null) {
        out.add(slow);
      }
    }
    return out;
  }

  /** Without marks the scale is the athlete's own size; g then tells how much slower the film plays. */
  private static @Nullable String slowed(List<ReadFlight> flights, Setup setup) {
    double[] g = flights.stream().filter(f -> f.time_s() != null).mapToDouble(ReadFlight::fallen_ms2).filter(v -> !Double.isNaN(v)).sorted().toArray();
    if (setup.scaled() || g.length < FEWEST || g[g.length / 2] <= 0) {
      return null;
    }
    double times = Math.sqrt(G / g[g.length / 2]);
    return times < SLOWED
        ? null
        : String.format(
            Locale.ROOT,
            "By the athlete's size the body falls in flight with %.1f m/s2 instead of 9.8: the film plays about %.1f times slower than it was filmed. Set how many times slower it plays, or all times are too long.",
            g[g.length / 2], times);
  }
}
