package boundwright.season.chance;

/** What came of one simulated season, by the athlete's place in the squad. */
final class SeasonDrawn {
  /** By athlete, main meet (or the last day, where there is none) and family: approach steps. */
  final int[][] steps;
  /** By athlete and week: load of both legs [1/100 standing-bound contact]. */
  final int[][] load;
  /** Sessions and meets that were done. */
  final int[] sessions;
  /** Sessions that were planned and missed. */
  final int[] missed;
  /** Days that the mend changed: smaller, elsewhere, from fewer steps, given up, made up for. */
  final int[] mended;
  /** Days refused by the rules of the plan, looked at once more when the season was over. */
  int refused;
  /** Meets that were not jumped because too much was trained or jumped before. */
  int meetsGivenUp;
  /** Main meets before which the load did not fall as far as it must. */
  int tapersMissed;

  SeasonDrawn(int athletes) {
    steps = new int[athletes][];
    load = new int[athletes][];
    sessions = new int[athletes];
    missed = new int[athletes];
    mended = new int[athletes];
  }
}
