package boundwright.season.year;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.load.Answer;
import boundwright.load.Band;
import boundwright.load.Guard;
import boundwright.load.LegCare;
import boundwright.load.Season;
import boundwright.load.Verdict;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LegLoad;
import boundwright.load.back.LegBack;
import boundwright.readiness.DrillFamily;
import boundwright.season.Away;
import boundwright.season.Block;
import boundwright.season.Climb;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What may be done on each day of a season: sessions that the guard does not refuse whatever was before, at places that are open, on days
 * on which the athlete can train. Rest is always among them, but for the day of a meet, on which the meet alone is.
 */
public final class Choices {
  private static final int MOST_UNITS = 20;
  private static final int LEAST_UNITS = 2;
  private static final int LEAST_COMBINATIONS = 3;
  private static final int MOST_COMBINATIONS = 14;
  private static final int LEAST_JUMPS = 4;
  private static final int MOST_JUMPS = 10;
  /** Approach steps from which full jumps are made (judgement). */
  private static final int JUMPS_FROM = 6;

  private final SeasonInput input;
  private final ContactWeights weights;
  private final Map<Alike, List<Choice>> atPlace = new HashMap<>();
  private final Map<List<Alike>, List<Choice>> together = new HashMap<>();

  /** For a season. */
  public Choices(SeasonInput input) {
    this.input = input;
    this.weights = new ContactWeights(input.rules().guard().scale());
  }

  /** What two athletes, or two days, have in common when they may do the same at a place. */
  private record Alike(
      Level level, @Nullable Band growing, Season season, Map<DrillFamily, Integer> steps, Foot takeOff, boolean soft, List<Double> backs, int venue) {}

  /**
   * What an athlete may do on a day.
   *
   * @param climbs expected approaches, one for each family
   */
  public List<Choice> of(Member m, List<Climb> climbs, LocalDate day) {
    Map<DrillFamily, Integer> steps = new EnumMap<>(DrillFamily.class);
    climbs.forEach(c -> steps.put(c.family(), c.stepsOn(day)));
    Menu menu = new Menu(steps, m.fullSteps(), m.athlete().takeOffFoot());
    Optional<Away.Why> away = m.away(day);
    boolean gone = away.isPresent() && away.get() != Away.Why.SOFT;
    LocalDate joins = m.joins();
    if (gone || (joins != null && day.isBefore(joins))) {
      return List.of(Choice.REST);
    }
    Optional<Meet> meet = input.meet(m, day);
    if (meet.isPresent()) {
      return List.of(choice(guard(m, day), day, menu.meet(Surface.TRACK), -1).at(0));
    }
    if (!m.days().contains(day.getDayOfWeek())) {
      return List.of(Choice.REST);
    }
    List<List<Choice>> parts = new ArrayList<>();
    List<Alike> keys = new ArrayList<>();
    for (int v = 0; v < input.venues().size(); v++) {
      if (input.venues().get(v).open(day)) {
        Band growing = m.growing() ? growing(m, day) : null;
        Alike alike =
            new Alike(
                m.athlete().level(), growing, input.period(day).season(), Map.copyOf(steps), m.athlete().takeOffFoot(), away.isPresent(), backs(m, day), v);
        int venue = v;
        keys.add(alike);
        parts.add(atPlace.computeIfAbsent(alike, k -> List.copyOf(all(m, menu, day, venue, k.soft()))));
      }
    }
    return together.computeIfAbsent(List.copyOf(keys), k -> numbered(parts));
  }

  /** A day that is over, as it was. */
  Choice done(DayLoad load, SessionKind kind) {
    if (load.isEmpty()) {
      return Choice.REST;
    }
    LegLoad legs = weights.of(load);
    Session session = new Session(kind, null, load.work().stream().map(w -> new Block(w, 1, false)).toList());
    boolean hard = load.hard(input.rules().guard().limits().hardContacts(), input.rules().guard().limits().hardSteps());
    return new Choice(
        0, session, -1, hundredths(legs.rightUnits()), hundredths(legs.leftUnits()), load.contacts(), load.contacts(Foot.RIGHT) - load.contacts(Foot.LEFT), hard,
        load.onlyMeet(), 0);
  }

  /** What legs on their way back may carry on a day, which is all that a session by itself is judged by. */
  private static List<Double> backs(Member m, LocalDate day) {
    List<Double> out = new ArrayList<>();
    for (LegBack b : m.backs()) {
      if (b.holds(day)) {
        out.addAll(List.of(b.leg() == Foot.RIGHT ? 1.0 : 2.0, b.week(day), b.perDay(day)));
      }
    }
    return List.copyOf(out);
  }

  private static List<Choice> numbered(List<List<Choice>> parts) {
    List<Choice> out = new ArrayList<>(List.of(Choice.REST));
    parts.forEach(part -> part.forEach(c -> out.add(c.at(out.size()))));
    return List.copyOf(out);
  }

  private Band growing(Member m, LocalDate day) {
    long weeks = Math.max(0, ChronoUnit.WEEKS.between(began(m, day), day));
    return input.rules().guard().limits().growingSession(input.period(day).season(), m.athlete().level(), weeks);
  }

  private static LocalDate began(Member m, LocalDate otherwise) {
    LocalDate first = m.firstSession();
    LocalDate logged = m.past().first();
    return first != null ? first : logged != null ? logged : otherwise;
  }

  private List<Choice> all(Member m, Menu menu, LocalDate day, int v, boolean soft) {
    List<Choice> out = new ArrayList<>();
    Guard.AthleteDay guard = guard(m, day);
    Venue venue = input.venues().get(v);
    for (int units = LEAST_UNITS; units <= MOST_UNITS; units++) {
      offer(out, guard, day, menu.bounds(venue.key(), venue.surface(), units, Foot.RIGHT), v, soft);
      if (Menu.boundsUneven(units, menu.series())) {
        offer(out, guard, day, menu.bounds(venue.key(), venue.surface(), units, Foot.LEFT), v, soft);
      }
    }
    offer(out, guard, day, menu.tests(venue.key(), venue.surface()), v, soft);
    if (venue.sand()) {
      for (int units = LEAST_COMBINATIONS; units <= MOST_COMBINATIONS; units++) {
        offer(out, guard, day, menu.combinations(venue.key(), venue.surface(), units, Foot.RIGHT), v, soft);
        if (units % 2 == 1) {
          offer(out, guard, day, menu.combinations(venue.key(), venue.surface(), units, Foot.LEFT), v, soft);
        }
      }
      for (int jumps = LEAST_JUMPS; jumps <= MOST_JUMPS; jumps += 2) {
        Session session = menu.jumps(venue.key(), venue.surface(), jumps);
        if (session.steps() >= JUMPS_FROM) {
          offer(out, guard, day, session, v, soft);
        }
      }
    }
    return out;
  }

  private void offer(List<Choice> out, Guard.AthleteDay guard, LocalDate day, Session session, int venue, boolean soft) {
    Choice c = choice(guard, day, session, venue);
    boolean little = !soft || (c.contacts() <= input.rules().softContacts() && !c.hard());
    if (c.cautions() >= 0 && little) {
      out.add(c);
    }
  }

  /** With {@code cautions} below 0 if the guard refuses it whatever was before. */
  private Choice choice(Guard.AthleteDay guard, LocalDate day, Session session, int venue) {
    DayLoad load = session.on(day);
    Verdict verdict = guard.judge(load);
    int cautions = verdict.answer() == Answer.REFUSED ? -1 : (int) verdict.findings().stream().filter(f -> f.answer() == Answer.CAUTION).count();
    LegLoad legs = weights.of(load);
    boolean hard = load.hard(input.rules().guard().limits().hardContacts(), input.rules().guard().limits().hardSteps());
    return new Choice(
        0, session, venue, hundredths(legs.rightUnits()), hundredths(legs.leftUnits()), load.contacts(),
        load.contacts(Foot.RIGHT) - load.contacts(Foot.LEFT), hard, session.kind() == SessionKind.MEET, cautions);
  }

  /** The guard of a day before which nothing is known: what it refuses then it always refuses. */
  private Guard.AthleteDay guard(Member m, LocalDate day) {
    Guard guard = new Guard(input.rules().guard().limits(), input.period(day).season(), weights);
    LegCare care = new LegCare(m.growing(), m.growing() ? began(m, day) : m.firstSession(), List.of(), List.of(), m.backs(), null);
    return guard.on(m.athlete().level(), care, History.NONE, day);
  }

  static int hundredths(double units) {
    return (int) Math.round(100 * units);
  }
}
