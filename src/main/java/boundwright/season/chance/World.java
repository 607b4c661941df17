package boundwright.season.chance;

/**
 * The numbers drawn for one simulated season. Each is drawn for what it is about (who, what, which day) and not in turn, so that a plan with
 * more sessions, or another athlete, leaves all others as they are: common random numbers. Mixed by the finalizer of SplitMix64 (Steele,
 * Lea and Flood 2014, OOPSLA; memory).
 */
final class World {
  private static final long STEP = 0x9E3779B97F4A7C15L;
  private final long key;

  /** What is drawn. */
  enum What {
    /** Whether somebody comes. */
    COMES(1),
    /** Whether days away begin. */
    AWAY(2),
    /** How long they last. */
    AWAY_DAYS(3),
    /** Whether rain closes the grass. */
    RAIN(4),
    /** How fast somebody learns in all. */
    LASTING(5),
    /** How long one stay takes. */
    STAY(6);

    private final long number;

    What(long number) {
      this.number = number;
    }
  }

  /**
   * Of a season.
   *
   * @param seed of all of them
   * @param season number of this one
   */
  World(long seed, long season) {
    key = mixed(mixed(seed + STEP) ^ (season + 1) * STEP);
  }

  /** What an athlete's numbers of a kind are drawn from; 0 for what is everybody's. */
  long key(What what, long athlete) {
    return mixed(mixed(key + what.number * STEP) + (athlete + 1) * STEP);
  }

  /** Uniform on 0 to 1, 1 left out. */
  static double uniform(long key, long number) {
    return (mixed(key + (number + 1) * STEP) >>> 11) * 0x1.0p-53;
  }

  private static long mixed(long x) {
    long z = (x ^ x >>> 30) * 0xBF58476D1CE4E5B9L;
    z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
    return z ^ z >>> 31;
  }
}
