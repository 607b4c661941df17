package boundwright.load;

import boundwright.athlete.Level;
import boundwright.quantity.RefusedException;
import java.util.EnumMap;
import java.util.Map;

/**
 * The guard's limits: settings of the facility. The defaults' sources stand in {@link LoadSources} and beside every
 * finding. Where a source gives a range, its low end is where caution begins and its high end where the guard refuses.
 *
 * @param session contacts in a session by season and level
 * @param growing contacts in a session for a growing athlete new to bounding
 * @param growingWeeks weeks for which {@code growing} holds after the first session
 * @param growingSessions sessions in seven days for such an athlete before caution
 * @param spacingHours hours between hard sessions: below the larger caution, below the smaller refused
 * @param hardContacts contacts from which a session is hard
 * @param hardSteps approach steps from which a session is hard
 * @param rampPercent rise of seven days' contacts over those before, in per cent
 * @param rampFloor contacts in seven days below which a rise is never judged
 * @param seriesSteps approach steps from which single-leg series are judged
 * @param seriesContacts contacts in a row on one foot that make a single-leg series
 * @param seriesRefusedSteps approach steps from which a single-leg series is refused
 * @param pain pain 0 to 10
 */
public record GuardLimits(
    Map<Season, Map<Level, Band>> session,
    Band growing,
    int growingWeeks,
    int growingSessions,
    Band spacingHours,
    int hardContacts,
    int hardSteps,
    Band rampPercent,
    int rampFloor,
    int seriesSteps,
    int seriesContacts,
    int seriesRefusedSteps,
    Band pain) {

  /** The defaults with their sources, see {@link LoadSources}. */
  public static final GuardLimits DEFAULT =
      new GuardLimits(
          Map.of(
              Season.OFF_SEASON, bands(60, 100, 100, 150, 120, 200),
              Season.PRE_SEASON, bands(100, 250, 150, 300, 150, 450),
              Season.IN_SEASON, bands(80, 100, 100, 120, 120, 140)),
          new Band(50, 60),
          10,
          2,
          new Band(48, 72),
          60,
          6,
          new Band(10, 30),
          60,
          6,
          3,
          10,
          new Band(2, 5));

  /** Checks that every season and level has its band and takes copies. */
  public GuardLimits {
    Map<Season, Map<Level, Band>> copy = new EnumMap<>(Season.class);
    for (Season s : Season.values()) {
      Map<Level, Band> row = session.get(s);
      if (row == null || row.size() != Level.values().length) {
        throw new RefusedException("Contact limits for the " + s.label() + " are missing. Give one for each level.");
      }
      copy.put(s, Map.copyOf(row));
    }
    session = Map.copyOf(copy);
    positive("weeks", growingWeeks);
    positive("sessions a week", growingSessions);
    positive("contacts of a hard session", hardContacts);
    positive("contacts of a series", seriesContacts);
  }

  private static void positive(String what, int value) {
    if (value < 1) {
      throw new RefusedException("A limit of " + value + " " + what + " is too small: at least 1.");
    }
  }

  private static Map<Level, Band> bands(int b1, int b2, int i1, int i2, int a1, int a2) {
    return Map.of(
        Level.BEGINNER, new Band(b1, b2), Level.INTERMEDIATE, new Band(i1, i2), Level.ADVANCED, new Band(a1, a2));
  }

  /** Contacts in a session for this season and level. */
  public Band session(Season season, Level level) {
    Map<Level, Band> row = session.get(season);
    Band band = row == null ? null : row.get(level);
    if (band == null) {
      throw new IllegalStateException("no band for " + season + ", " + level);
    }
    return band;
  }
}
