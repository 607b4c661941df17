package boundwright.cli.season;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.season.Session;
import org.jspecify.annotations.Nullable;

/** A session in a few words. */
final class Told {
  private Told() {}

  /** As {@code combinations at pit, 36 contacts (right 18, left 18), from 6 steps}; null for rest. */
  static @Nullable String session(@Nullable Session s) {
    if (s == null) {
      return null;
    }
    String where = s.venue() == null ? "" : " at " + s.venue();
    return s.kind().label() + where + ", " + s.contacts() + " contacts (right " + s.contacts(Foot.RIGHT) + ", left " + s.contacts(Foot.LEFT) + "), "
        + Athlete.fromSteps(s.steps());
  }

  /** The same, with a word for rest. */
  static String day(@Nullable Session s) {
    String said = session(s);
    return said == null ? "rest" : said;
  }
}
