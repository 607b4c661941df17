package boundwright.approach.full;

import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.Weather;
import boundwright.approach.weather.WeatherLog;
import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.quantity.AskedOnce;
import boundwright.quantity.Estimate;
import boundwright.quantity.LastAnswer;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Says how far an athlete will jump from more approach steps, from every distance that the squad has logged. */
public final class FullRunDesk {
  /** The same jumps give the same answer on every machine. */
  private static final long SEED = 20_261_130L;
  /** Stands for an athlete who is asked about without being kept. */
  private static final long NOBODY = -1;
  /** A jump is asked about from so many half widths of its interval from the middle: 2 are 3.3 spreads (judgement). */
  private static final double FAR_OUTSIDE = 2;

  private final AskedOnce asked = new AskedOnce();
  private final FullRunLog log;
  private final WeatherLog weather;
  /** The squad's newest model: it is asked for athlete by athlete. */
  private final LastAnswer<Told, FullRunModel> learned = new LastAnswer<>();

  private record Told(List<SeenDistance> seen, LocalDate today) {}

  /** Works on these. */
  public FullRunDesk(FullRunLog log, WeatherLog weather) {
    this.log = log;
    this.weather = weather;
  }

  /**
   * Lets the triple jump pass: neither the curve nor the chance of a standard knows another event.
   *
   * @throws RefusedException for another, with where its aim is
   */
  public static void only(Event event) {
    if (event != Event.TRIPLE_JUMP) {
      throw new RefusedException(
          "The full run and the chance of a standard are told of the triple jump, not of the " + event.label() + ". For that ask for its aim: boundwright aim --event "
              + event.label().replace(' ', '-') + " --target LENGTH, or the page Aim > Long jump.");
    }
  }

  /**
   * What the squad's jumps say of an athlete.
   *
   * @param steps 4 to 26; null for the full run of the athlete, or the most steps that anybody has jumped from
   * @throws RefusedException if the steps are out of range; never for too few data
   */
  public FullRunAnswer answer(Athlete athlete, @Nullable Integer steps, LocalDate today) {
    return answer(athlete.id(), athlete.name(), null, steps, seen(), log.distances(athlete.id()), today);
  }

  /**
   * What the squad's jumps say of one jump of somebody who is not kept.
   *
   * @param from steps that were jumped from, 4 to 26
   * @param distance_m how far [m]
   * @param steps asked for, 4 to 26
   */
  public FullRunAnswer answer(int from, double distance_m, int steps, LocalDate today) {
    List<SeenDistance> seen = new ArrayList<>(seen());
    seen.add(new SeenDistance(NOBODY, today, from, distance_m, Weather.UNKNOWN));
    return answer(NOBODY, "this athlete", distance_m, steps, seen, List.of(), today);
  }

  /**
   * Keeps a distance.
   *
   * @param sure whether one far from what was told is meant; otherwise it is asked about once
   * @throws RefusedException with the question, the first time
   */
  public DistanceEntry keep(Athlete athlete, DistanceEntry jump, boolean sure, LengthUnit unit, LocalDate today) {
    if (!sure) {
      ask(athlete, jump, unit, today);
    }
    return log.add(jump);
  }

  private void ask(Athlete athlete, DistanceEntry jump, LengthUnit unit, LocalDate today) {
    List<SeenDistance> seen = seen();
    if (seen.stream().noneMatch(s -> s.athleteId() == athlete.id()) || !Reach.of(seen).tells(jump.steps())) {
      return;
    }
    Estimate told = model(seen, today).forecast(athlete.id(), jump.steps()).jump_m(Math.abs(ChronoUnit.DAYS.between(jump.date(), today)));
    boolean far = Math.abs(jump.distance_m() - told.p50()) > FAR_OUTSIDE * told.halfWidth();
    if (far && asked.first(athlete.id() + "/" + jump.date() + "/" + jump.steps() + "/" + jump.distance_m())) {
      throw new RefusedException(
          athlete.name() + " is told to jump " + unit.write(told.p05()) + " to " + unit.write(told.p95()) + " from " + jump.steps() + " steps. Was it really "
              + unit.write(jump.distance_m()) + "? Tap again to keep it so (on the command line: --sure), or correct it. Nothing was kept.");
    }
  }

  private FullRunAnswer answer(
      long id,
      String name,
      @Nullable Double given_m,
      @Nullable Integer asked,
      List<SeenDistance> seen,
      List<DistanceEntry> kept,
      LocalDate today) {
    if (asked != null) {
      SeenDistance.steps(asked);
    }
    Integer usual = log.fullRuns().get(id);
    int steps = asked != null ? asked : usual != null && usual >= SeenDistance.FEWEST_STEPS ? usual : seen.isEmpty() ? 16 : Reach.of(seen).most();
    if (seen.stream().noneMatch(s -> s.athleteId() == id)) {
      return none(kept, steps, "No triple jump of " + name + " from a known number of steps, 4 or more, is kept. Log a distance with its steps.", "");
    }
    Reach reach = Reach.of(seen);
    String why = reach.missing(steps);
    FullRunModel model = model(seen, today);
    if (why != null) {
      return none(kept, steps, why, from(model, id, name));
    }
    List<FullRunForecast> curve = new ArrayList<>();
    for (int n = SeenDistance.FEWEST_STEPS; n <= SeenDistance.MOST_STEPS; n += 2) {
      if (reach.tells(n)) {
        curve.add(model.forecast(id, n));
      }
    }
    return new FullRunAnswer(
        kept, steps, given_m, model.forecast(id, base(seen, id, steps)), model.forecast(id, steps), curve, model.weather(), null, reach.guess(steps), from(model, id, name));
  }

  /** The same jumps on the same day make the same model, so it is worked out once. */
  private FullRunModel model(List<SeenDistance> seen, LocalDate today) {
    return learned.to(new Told(seen, today), t -> FullRunModel.of(t.seen, t.today, new Random(SEED)));
  }

  private static FullRunAnswer none(List<DistanceEntry> kept, int steps, String missing, String from) {
    return new FullRunAnswer(kept, steps, null, null, null, List.of(), null, missing, null, from);
  }

  /** The steps that an athlete has jumped from most, other than those asked for where there are others. */
  private static int base(List<SeenDistance> seen, long id, int asked) {
    Map<Integer, Integer> counts = new TreeMap<>();
    seen.stream().filter(s -> s.athleteId() == id).forEach(s -> counts.merge(s.steps(), 1, Integer::sum));
    if (counts.size() > 1) {
      counts.remove(asked);
    }
    int best = asked;
    int most = 0;
    for (Map.Entry<Integer, Integer> e : counts.entrySet()) {
      if (e.getValue() >= most) {
        best = e.getKey();
        most = e.getValue();
      }
    }
    return best;
  }

  /** All jumps whose steps are known, each once, with the weather of its day where it has none of its own. */
  List<SeenDistance> seen() {
    Map<LocalDate, Weather> days = new HashMap<>();
    for (DayWeather d : weather.days()) {
      days.put(d.date(), d.weather());
    }
    Map<Long, Integer> full = log.fullRuns();
    List<FoundDistance> once = new ArrayList<>();
    for (FoundDistance f : log.everybody()) {
      int same = -1;
      for (int i = once.size() - 1; i >= 0 && same < 0 && once.get(i).athleteId() == f.athleteId(); i--) {
        same = once.get(i).sameJump(f) ? i : -1;
      }
      if (same < 0) {
        once.add(f);
      } else if (once.get(same).steps() == null || !once.get(same).weather().knowsWind()) {
        FoundDistance there = once.get(same);
        once.set(
            same,
            new FoundDistance(
                f.athleteId(), f.date(), there.steps() != null ? there.steps() : f.steps(), f.distance_m(), there.weather().or(f.weather()), there.where()));
      }
    }
    List<SeenDistance> out = new ArrayList<>();
    for (FoundDistance f : once) {
      Integer steps = f.steps() != null ? f.steps() : full.get(f.athleteId());
      if (steps != null && steps >= SeenDistance.FEWEST_STEPS && steps <= SeenDistance.MOST_STEPS) {
        out.add(new SeenDistance(f.athleteId(), f.date(), steps, f.distance_m(), f.weather().or(days.getOrDefault(f.date(), Weather.UNKNOWN))));
      }
    }
    return List.copyOf(out);
  }

  private static String from(FullRunModel model, long id, String name) {
    int own = model.jumps(id);
    String steps = model.steps(id).stream().map(String::valueOf).reduce((a, b) -> a + ", " + b).orElse("");
    int tell = model.tellGain();
    return "From " + Notes.counted(own, "triple jump") + " of " + name + " (from " + steps + " steps) among " + model.jumps() + " of the squad. "
        + (tell == 0
            ? "Nobody has jumped from two different numbers of steps, so the gain from more steps is the makers' first guess."
            : Notes.counted(tell, "athlete has", "athletes have") + " jumped from two or more numbers of steps and tell what more steps give.");
  }
}
