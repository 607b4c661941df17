package boundwright.demo;

import boundwright.approach.full.DistanceEntry;
import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.Weather;
import boundwright.athlete.Athlete;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.meet.day.MeetDay;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Random;

/**
 * Distances from short runs, the weather of some days, the times of the meet and a meet to come, for the invented squad; with a dice-roll of their
 * own. They show how the program works and nothing about athletes.
 */
final class DemoFullRun {
  /** A meet that is still to come. */
  static final String LATER = "Saltmarsh Long Evening (invented)";

  private static final long SEED = 20_261_130L;
  private static final int DAYS_AHEAD = 38;

  /**
   * Who jumped from short runs.
   *
   * @param full mean distance from the full run [m]
   * @param steps of the full run
   * @param runs short runs that were jumped from
   */
  private record Jumper(String name, double full, int steps, List<Integer> runs) {}

  private static final List<Jumper> JUMPERS =
      List.of(
          new Jumper("Bram Curlew", 13.25, 16, List.of(6, 8, 8, 10, 12)),
          new Jumper("Linnea Saltwort", 11.60, 14, List.of(6, 8, 10, 12)),
          new Jumper("Rafi Eelgrass", 12.10, 14, List.of(6, 8, 10)),
          new Jumper("Ines Sandpiper", 10.75, 12, List.of(6, 8, 8)),
          new Jumper("Wren Samphire", 10.90, 12, List.of(4, 6, 8)));

  private DemoFullRun() {}

  /** Adds them to a store that {@link DemoJumps} has just filled. */
  static void fill(Workbench workbench) {
    Random random = new Random(SEED);
    LocalDate today = LocalDate.now(workbench.clock());
    for (Jumper who : JUMPERS) {
      Athlete athlete = workbench.athletes().byName(who.name()).orElseThrow();
      int day = 0;
      for (int steps : who.runs()) {
        LocalDate date = today.minusDays(66 - 3L * day++);
        double wind = Math.round(10 * 1.2 * random.nextGaussian()) / 10.0;
        for (int j = 0; j < 3; j++) {
          double m = who.full() * (1 - 0.20 * (Math.exp((6 - steps) / 5.5) - Math.exp((6 - who.steps()) / 5.5))) + 0.05 * wind + 0.14 * random.nextGaussian();
          Weather w = j == 0 ? Weather.gauge(wind) : j == 1 ? new Weather(Math.rint(wind), Weather.From.FLAG, null, null) : Weather.UNKNOWN;
          workbench.fullRunLog().add(new DistanceEntry(0, athlete.id(), date, steps, Math.round(100 * m) / 100.0, w, ""));
        }
      }
    }
    weather(workbench, today);
    meets(workbench, today);
  }

  private static void weather(Workbench workbench, LocalDate today) {
    workbench.weather().keep(new DayWeather(today.minusDays(66), new Weather(null, Weather.From.HEAD, 6.0, false), "all runs into the wind"));
    workbench.weather().keep(new DayWeather(today.minusDays(63), new Weather(1.5, Weather.From.FLAG, 8.0, true), "rain before"));
    workbench.weather().keep(new DayWeather(today.minusDays(60), new Weather(-0.5, Weather.From.FLAG, 11.0, false), ""));
    workbench.weather().keep(new DayWeather(today.minusDays(54), new Weather(null, null, 13.0, true), "drizzle"));
    workbench.weather().keep(new DayWeather(today.minusDays(20), new Weather(-1.5, Weather.From.FLAG, 12.0, false), ""));
    workbench.weather().keep(new DayWeather(today.minusDays(13), new Weather(0.5, Weather.From.FLAG, 15.0, true), "grass wet"));
    workbench.weather().keep(new DayWeather(today.minusDays(6), new Weather(2.0, Weather.From.FLAG, 16.0, false), ""));
    workbench.weather().keep(new DayWeather(today, new Weather(1.0, Weather.From.FLAG, 17.0, false), "ribbon at the pit"));
  }

  private static void meets(Workbench workbench, LocalDate today) {
    workbench.meets().all().stream()
        .filter(m -> m.name().equals(DemoJumps.MEET))
        .forEach(m -> workbench.meetDays().keep(new MeetDay(m.id(), LocalTime.of(14, 30), 30, 60, 1.2, 1.5, "spikes 6 mm; cold tent, take a jacket")));
    MeetSheet later = workbench.meets().add(MeetSheet.of(LATER, today.plusDays(DAYS_AHEAD), BoardDistance.ALL.get(0), Scoring.TRIPLE_JUMP_MEN, MeetRules.DEFAULT));
    for (String name : List.of("Bram Curlew", "Linnea Saltwort")) {
      Athlete athlete = workbench.athletes().byName(name).orElseThrow();
      workbench.meets().enter(later.id(), new Entrant(0, athlete.id(), name));
    }
  }
}
