package boundwright.load;

import boundwright.athlete.Level;
import boundwright.quantity.RefusedException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The guard's limits: settings of the facility. The defaults' sources stand in {@link LoadSources} and beside every
 * finding. Where a source gives a range, its low end is where caution begins and its high end where the guard refuses.
 *
 * @param session jump contacts in a session by season and level; in season, where no range by season was found, those by level of
 *     experience
 * @param growing jump contacts in a session with which a growing athlete starts
 * @param growingWeeks weeks after the first session for which that holds; then it rises by steps
 * @param growingSessions sessions in seven days for a growing athlete before caution, one more with each {@code growingWeeks}
 * @param growingStep contacts of a step, up to the lowest limit of the level
 * @param growingStepWeeks weeks between two steps
 * @param spacingHours hours between hard sessions: below the larger caution, below the smaller refused
 * @param hardContacts contacts from which a session is hard
 * @param hardSteps approach steps from which a session is hard
 * @param ownPercent how far seven days may lie above the athlete's own weeks, in per cent
 * @param startWeek a week with which anybody may start, both legs [standing-bound contacts]; own weeks below it count as it
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
    int growingStep,
    int growingStepWeeks,
    Band spacingHours,
    int hardContacts,
    int hardSteps,
    Band ownPercent,
    int startWeek,
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
          10,
          4,
          new Band(48, 72),
          60,
          6,
          new Band(10, 30),
          120,
          6,
          3,
          10,
          new Band(2, 5));

  /** Checks that every season and level has its band and takes copies. */
  public GuardLimits {
    Map<Season, Map<Level, Band>> copy = new EnumMap<>(Season.class);
    for (Season s : Season.values()) {
      Map<Level, Band> row = session.get(s);
      if (row == null || !row.keySet().equals(Set.copyOf(Level.KNOWN))) {
        throw new RefusedException("Contact limits for the " + s.label() + " are missing. Give one for each level.");
      }
      copy.put(s, Map.copyOf(row));
    }
    session = Map.copyOf(copy);
    positive("weeks", growingWeeks);
    positive("sessions a week", growingSessions);
    positive("contacts of a step", growingStep);
    positive("weeks between two steps", growingStepWeeks);
    positive("contacts of a starting week", startWeek);
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

  /**
   * Jump contacts in a session.
   *
   * @param season the part of the year, or null when it is not set: the lowest limits of the three
   * @param level how far they have come; a level that is not set is judged as a beginner's
   */
  public Band session(@Nullable Season season, Level level) {
    Level known = level.judgedAs();
    return season == null
        ? Stream.of(Season.values()).map(s -> kept(s, known)).reduce(GuardLimits::lower).orElseThrow()
        : kept(season, known);
  }

  /**
   * Jump contacts in a session of a growing athlete: the start, then step by step to the lowest limits of the level, and never above
   * those of the season.
   *
   * @param weeks whole weeks since the first session
   */
  public Band growingSession(@Nullable Season season, Level level, long weeks) {
    long steps = weeks < growingWeeks ? 0 : 1 + (weeks - growingWeeks) / growingStepWeeks;
    Band risen = new Band(growing.caution() + growingStep * steps, growing.refuse() + growingStep * steps);
    return lower(lower(risen, session(null, level)), session(season, level));
  }

  /**
   * What seven days are held to beside a week of the athlete's own.
   *
   * @param before that week, both legs [standing-bound contacts]
   */
  public Band ownWeek(double before) {
    double base = Math.max(before, startWeek);
    return new Band(base * (1 + ownPercent.caution() / 100), base * (1 + ownPercent.refuse() / 100));
  }

  /** Sessions in seven days of a growing athlete before caution. */
  public int growingSessions(long weeks) {
    return growingSessions + (int) Math.max(0, weeks / growingWeeks);
  }

  private static Band lower(Band a, Band b) {
    return new Band(Math.min(a.caution(), b.caution()), Math.min(a.refuse(), b.refuse()));
  }

  private Band kept(Season season, Level level) {
    Map<Level, Band> row = session.get(season);
    Band band = row == null ? null : row.get(level);
    if (band == null) {
      throw new IllegalStateException("no band for " + season + ", " + level);
    }
    return band;
  }
}
