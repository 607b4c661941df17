package boundwright.season.chance;

import boundwright.readiness.DrillFamily;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What simulated seasons say of a plan.
 *
 * @param seasons that were simulated; fewer than asked for if it was stopped
 * @param asked how many were asked for
 * @param checked seasons of which the limits themselves judged every day
 * @param refusedDays days refused after mending, by the rules in all seasons and by the limits themselves in those checked: 0
 * @param meetsGivenUp meets a season that were not jumped because of what was before them, mean over the seasons, of all athletes
 * @param tapersMissed main meets a season before which the load did not fall as far as it must, likewise
 * @param squad of all athletes together
 * @param athletes in the order of the squad
 * @param answers to what was asked beside, in order
 */
public record Chances(
    int seasons,
    int asked,
    int checked,
    int refusedDays,
    double meetsGivenUp,
    double tapersMissed,
    List<Band> squad,
    List<Athlete> athletes,
    List<Answer> answers) {
  /** Takes copies. */
  public Chances {
    squad = List.copyOf(squad);
    athletes = List.copyOf(athletes);
    answers = List.copyOf(answers);
  }

  /** Standard error of a chance that was counted in these seasons. */
  public double error(double chance) {
    return seasons == 0 ? 0 : Math.sqrt(Math.max(0, chance * (1 - chance)) / seasons);
  }

  /**
   * The load of a week in the simulated seasons.
   *
   * @param from its first day
   * @param low a tenth of the seasons lie below [standing-bound contacts]
   * @param middle half of them
   * @param high nine tenths of them
   * @param planned of the published plan
   */
  public record Band(LocalDate from, double low, double middle, double high, double planned) {}

  /**
   * One athlete.
   *
   * @param attendance share of the planned sessions to which they come, as it was drawn with
   * @param sessions done in a season, mean
   * @param missed in a season, mean
   * @param mended days of a season that are not as planned, beside those missed, mean
   * @param load by week
   * @param approaches by main meet and family
   */
  public record Athlete(
      long id, String name, double attendance, double sessions, double missed, double mended, List<Band> load, List<Approach> approaches) {
    /** Takes copies. */
    public Athlete {
      load = List.copyOf(load);
      approaches = List.copyOf(approaches);
    }
  }

  /**
   * From how many steps an athlete works in a family by a day.
   *
   * @param meet name of the main meet; the season's end where there is none
   * @param date of it
   * @param family of drills
   * @param planned steps of the plan
   * @param by share of the seasons, by steps
   */
  public record Approach(String meet, LocalDate date, DrillFamily family, int planned, Map<Integer, Double> by) {
    /** Takes a copy. */
    public Approach {
      by = Map.copyOf(new TreeMap<>(by));
    }

    /** Chance of these steps or more. */
    public double atLeast(int steps) {
      return Math.min(1, by.entrySet().stream().filter(e -> e.getKey() >= steps).mapToDouble(Map.Entry::getValue).sum());
    }
  }

  /**
   * What something else would buy, from the same seasons simulated with and without it.
   *
   * @param what is asked
   * @param squad what it buys, over the squad
   * @param athletes what it buys of each, in the order of the squad: chance of the planned approaches
   */
  public record Answer(WhatIf what, List<Buys> squad, List<Buys> athletes) {
    /** Takes copies. */
    public Answer {
      squad = List.copyOf(squad);
      athletes = List.copyOf(athletes);
    }
  }

  /**
   * A difference.
   *
   * @param of what; the athlete's name where it is one's own
   * @param unit of it
   * @param mean with it less without it
   * @param error standard error of the mean, over pairs of seasons
   */
  public record Buys(String of, String unit, double mean, double error) {}
}
