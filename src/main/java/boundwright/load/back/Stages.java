package boundwright.load.back;

import boundwright.quantity.RefusedException;

/**
 * The stages of a way back: each a share of the leg's former week, growing by the same part from stage to stage until the former week is
 * reached. A stage lasts a week at least, because the growth is a week's. There are {@code ceil(ln(1/start) / ln(1 + growth))} of
 * them below the former week: from 30 % at 15 % 9 (8.61), at 10 % 13 (12.63), both worked. Start share and growth are judgement.
 *
 * @param startShare of the former week, {@value #LEAST_START} to {@value #MOST_START}
 * @param growth from one week to the next, {@value #LEAST_GROWTH} to {@value #MOST_GROWTH}
 */
public record Stages(double startShare, double growth) {
  /** Least share that is begun with. */
  public static final double LEAST_START = 0.1;
  /** Most: above it there is no way back to go. */
  public static final double MOST_START = 0.9;
  /** Least growth a week. */
  public static final double LEAST_GROWTH = 0.02;
  /** Most growth a week: what the limits of load refuse is never planned. */
  public static final double MOST_GROWTH = 0.3;
  /** Three tenths of the former week, a tenth more each week (judgement). */
  public static final Stages USUAL = new Stages(0.3, 0.1);
  /** Days that a stage lasts at least: the growth is a week's. */
  public static final int LEAST_DAYS = 7;
  /** Days on which the leg was loaded and nothing was felt, asked of each stage (judgement). */
  public static final int CLEAN_DAYS = 2;

  /** Share of the former week from which days are 72 hours apart, not 48 (judgement within 48-72 h). */
  private static final double HARD_SHARE = 2.0 / 3;
  private static final double ROUNDING = 1e-9;

  /** Refuses what is no way back. */
  public Stages {
    if (!(startShare >= LEAST_START && startShare <= MOST_START)) {
      throw new RefusedException(
          "A start at " + percent(startShare) + " % of the former week is out of range: 10 to 90 %. 30 % is usual; licensed medical staff may say another.");
    }
    if (!(growth >= LEAST_GROWTH && growth <= MOST_GROWTH)) {
      throw new RefusedException("A growth of " + percent(growth) + " % a week is out of range: 2 to 30 %. 10 % is usual.");
    }
  }

  /** How many stages there are below the former week. */
  public int count() {
    return (int) Math.ceil(Math.log(1 / startShare) / Math.log(1 + growth) - ROUNDING);
  }

  /** Share of the former week in a stage; 1 from {@link #count} on, where the way is over. */
  public double share(int stage) {
    return stage >= count() ? 1 : startShare * Math.pow(1 + growth, stage);
  }

  /** Fewest days from one loaded day to the next in a stage: 2 (48 hours), from two thirds of the former week on 3 (72 hours). */
  public int restDays(int stage) {
    return share(stage) < HARD_SHARE ? 2 : 3;
  }

  /** Share of the former week on one loaded day of a stage: its week shared out over the {@value #CLEAN_DAYS} days that it asks for. */
  public double dayShare(int stage) {
    return share(stage) / CLEAN_DAYS;
  }

  /** The stage after a pain that was too much: one back, never before the first. */
  public static int after(int stage, Grade grade) {
    return grade == Grade.TOO_MUCH ? Math.max(0, stage - 1) : stage;
  }

  private static long percent(double share) {
    return Math.round(100 * share);
  }
}
