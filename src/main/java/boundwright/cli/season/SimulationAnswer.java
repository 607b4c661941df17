package boundwright.cli.season;

import boundwright.cli.Json;
import boundwright.season.chance.Chances;
import java.util.List;
import java.util.TreeMap;

/**
 * Simulated seasons in JSON; names and units stand in {@code docs/formats-json.md}.
 *
 * @param season name
 * @param seasons simulated
 * @param asked for; more than {@code seasons} if it was stopped
 * @param seed the same seed, the same answer
 * @param refusedDays after mending
 * @param checkedSeasons of which the limits judged every day
 * @param meetsGivenUp a season, mean
 * @param tapersMissed a season, mean
 * @param squadLoad by week
 * @param athletes in the order of the squad
 * @param whatIf what was asked beside
 */
public record SimulationAnswer(
    String season, int seasons, int asked, long seed, int refusedDays, int checkedSeasons, double meetsGivenUp, double tapersMissed, List<Week> squadLoad,
    List<Athlete> athletes, List<WhatIf> whatIf) {
  /**
   * Load of a week.
   *
   * @param from its first day
   */
  public record Week(String from, double planned_standingBounds, double low_standingBounds, double middle_standingBounds, double high_standingBounds) {}

  /**
   * An athlete.
   *
   * @param attendance it was drawn with
   * @param sessions done in a season, mean
   * @param missed likewise
   * @param mended days likewise
   */
  public record Athlete(
      String athlete, double attendance, double sessions, double missed, double mended, List<Week> load, List<Approach> approaches) {}

  /**
   * An approach by a main meet.
   *
   * @param meet name
   * @param date of it
   * @param family of drills
   * @param planned_steps of the plan
   * @param chances by steps, shortest first
   */
  public record Approach(String meet, String date, String family, int planned_steps, List<Chance> chances) {}

  /**
   * A chance.
   *
   * @param steps of the approach
   * @param chance of working from so many or more by then
   * @param standardError of it
   */
  public record Chance(int steps, double chance, double standardError) {}

  /** What something else buys. */
  public record WhatIf(String what, List<Buys> squad, List<Buys> byAthlete) {}

  /** A difference of pairs. */
  public record Buys(String of, String unit, double mean, double standardError) {}

  static SimulationAnswer of(String season, long seed, Chances c) {
    return new SimulationAnswer(
        season, c.seasons(), c.asked(), seed, c.refusedDays(), c.checked(), tenth(c.meetsGivenUp() * 100) / 100, tenth(c.tapersMissed() * 100) / 100, weeks(c.squad()),
        c.athletes().stream().map(a -> athlete(a, c)).toList(),
        c.answers().stream().map(a -> new WhatIf(a.what().said(), buys(a.squad()), buys(a.athletes()))).toList());
  }

  private static Athlete athlete(Chances.Athlete a, Chances c) {
    return new Athlete(
        a.name(), Json.chance(a.attendance()), tenth(a.sessions()), tenth(a.missed()), tenth(a.mended()), weeks(a.load()),
        a.approaches().stream().map(p -> new Approach(p.meet(), p.date().toString(), p.family().label(), p.planned(), chances(p, c))).toList());
  }

  private static List<Chance> chances(Chances.Approach p, Chances c) {
    return new TreeMap<>(p.by()).keySet().stream().map(s -> new Chance(s, Json.chance(p.atLeast(s)), Json.chance(c.error(p.atLeast(s))))).toList();
  }

  private static List<Week> weeks(List<Chances.Band> all) {
    return all.stream().map(b -> new Week(b.from().toString(), tenth(b.planned()), tenth(b.low()), tenth(b.middle()), tenth(b.high()))).toList();
  }

  private static List<Buys> buys(List<Chances.Buys> all) {
    return all.stream().map(b -> new Buys(b.of(), b.unit(), Json.chance(b.mean()), Json.chance(b.error()))).toList();
  }

  private static double tenth(double x) {
    return Math.round(10 * x) / 10.0;
  }
}
