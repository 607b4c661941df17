package boundwright.demo;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Surface;
import boundwright.athlete.person.Scope;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Flight;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkSettings;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * An invented squad at an invented place, to try things on. Nobody in it is a real person; every length comes from a seeded
 * dice-roll around made-up flights, so it shows how the program works and nothing about athletes.
 */
public final class DemoSquad {
  /** What a screen or a paper says wherever the squad is shown. */
  public static final String NOTE = "Invented squad at an invented place: no person here is real, and no length was jumped.";

  private static final long SEED = 20_260_512L;
  private static final CoachSettings SETTINGS =
      new CoachSettings(
          LengthUnit.METRES,
          MarkSettings.DEFAULT,
          new Facility("Saltmarsh Flats (invented place)", 60, 9, 80, Surface.TRACK),
          Sequence.SET_CONTACTS);
  private static final DayPlan PLAN =
      new DayPlan(
          "Tuesday, bounding (invented squad)",
          List.of(
              new Drill(Sequence.parse("RL x5"), 0, 1, 2, true),
              new Drill(Sequence.parse("R x6"), 0, 1, 2, false),
              new Drill(Sequence.parse("L x6"), 0, 1, 2, false),
              new Drill(Sequence.parse("RRLL RRLL RR"), null, 1, 2, false),
              new Drill(Sequence.parse("RRL x2"), null, 2, 2, true)));
  /** Days before today on which the squad trained. */
  private static final int[] DAYS = {23, 20, 16, 13, 9, 6, 2};

  /** An invented athlete; {@code size} and {@code pace} are shares of the middle of the squad. */
  private record Invented(String name, Level level, Foot foot, int rung, double size, double pace, int sessions) {}

  private static final List<Invented> SQUAD =
      List.of(
          new Invented("Wren Samphire", Level.INTERMEDIATE, Foot.RIGHT, 4, 1.02, 1.00, 6),
          new Invented("Otis Sedgeley", Level.BEGINNER, Foot.RIGHT, 2, 0.82, 0.92, 4),
          new Invented("Mabel Cordgrass", Level.BEGINNER, Foot.LEFT, 0, 0.79, 0.90, 4),
          new Invented("Rafi Eelgrass", Level.INTERMEDIATE, Foot.LEFT, 6, 1.06, 1.03, 5),
          new Invented("Linnea Saltwort", Level.ADVANCED, Foot.RIGHT, 8, 1.16, 1.06, 6),
          new Invented("Tovi Plover", Level.BEGINNER, Foot.RIGHT, 2, 0.87, 0.94, 3),
          new Invented("Ines Sandpiper", Level.INTERMEDIATE, Foot.RIGHT, 4, 0.96, 0.98, 5),
          new Invented("Bram Curlew", Level.ADVANCED, Foot.LEFT, 10, 1.22, 1.09, 6));

  private final Workbench workbench;
  private final LocalDate today;
  private final Random random = new Random(SEED);

  private DemoSquad(Workbench workbench) {
    this.workbench = workbench;
    this.today = LocalDate.now(workbench.clock());
  }

  /**
   * Fills an empty store, in one transaction.
   *
   * @throws RefusedException if the store holds an athlete or a plan already: real and invented people are never mixed
   */
  public static void fill(Workbench workbench) {
    if (!workbench.athletes().all().isEmpty() || !workbench.settings().plan().drills().isEmpty()) {
      throw new RefusedException(
          "The store holds a squad or a plan already; the invented squad only goes into an empty one. Give a new folder with --data.");
    }
    DemoSquad demo = new DemoSquad(workbench);
    workbench.reps().write(w -> demo.fillInside());
  }

  private int fillInside() {
    workbench.markInvented();
    workbench.settings().keep(SETTINGS);
    workbench.settings().keep(PLAN);
    List<Rep> reps = new ArrayList<>();
    DemoCare care = new DemoCare(workbench, today);
    for (Invented who : SQUAD) {
      Athlete athlete = workbench.athletes().add(new Athlete(0, who.name(), who.level(), who.foot(), who.rung()));
      workbench.people().say(athlete.id(), Scope.FILM, true);
      test(athlete, who);
      runUps(athlete, who);
      train(athlete, who, reps);
      care.watch(athlete, reps);
    }
    workbench.logbook().logAll(reps);
    DemoJumps.fill(workbench);
    DemoFullRun.fill(workbench);
    DemoLongJumps.fill(workbench);
    DemoLoad.fill(workbench);
    return reps.size();
  }

  private void test(Athlete athlete, Invented who) {
    LocalDate day = today.minusDays(27);
    known(athlete, who, KnownMark.Kind.STANDING_TRIPLE, 0, day);
    if (who.level() != Level.BEGINNER) {
      known(athlete, who, KnownMark.Kind.STANDING_FIVE, 0, day);
    }
    if (who.level() == Level.ADVANCED) {
      known(athlete, who, KnownMark.Kind.BEST_TRIPLE, 12, day.minusDays(200));
    }
  }

  private void known(Athlete athlete, Invented who, KnownMark.Kind kind, int steps, LocalDate day) {
    double reached = landing(positions(who, starting(kind.sequence(), who.foot()), steps, 1.02));
    workbench.athletes().addKnownMark(athlete.id(), new KnownMark(0, kind, steps, centimetres(reached), day));
  }

  private void runUps(Athlete athlete, Invented who) {
    for (int steps = who.rung(); steps >= Math.max(2, who.rung() - 2); steps -= 2) {
      double length = 0;
      for (int k = 0; k < steps; k++) {
        // Steps grow from about 1.2 m towards 2.1 m.
        length += who.pace() * (2.1 - 0.9 * Math.pow(0.78, k));
      }
      boolean timed = who.level() == Level.ADVANCED;
      double speed = who.pace() * (8.8 - 5.6 * Math.exp(-steps / 5.0)) + 0.1 * random.nextGaussian();
      workbench
          .athletes()
          .addRunUp(
              athlete.id(),
              new MeasuredRunUp(
                  0,
                  steps,
                  centimetres(length + 0.08 * random.nextGaussian()),
                  timed ? Math.round(speed * 100) / 100.0 : null,
                  today.minusDays(20)));
    }
  }

  private void train(Athlete athlete, Invented who, List<Rep> reps) {
    Map<String, Double> lastLanding = new HashMap<>();
    for (int s = DAYS.length - who.sessions(); s < DAYS.length; s++) {
      double day = 1 + 0.025 * random.nextGaussian();
      List<Drill> drills = new ArrayList<>(PLAN.drills());
      while (drills.size() > 2) {
        drills.remove(random.nextInt(drills.size()));
      }
      for (Drill drill : drills) {
        for (int r = 0; r < 2; r++) {
          reps.add(rep(athlete, who, drill, today.minusDays(DAYS[s]), day, lastLanding));
        }
      }
    }
  }

  private Rep rep(Athlete athlete, Invented who, Drill drill, LocalDate date, double day, Map<String, Double> lastLanding) {
    int steps = drill.stepsFor(who.rung());
    Sequence sequence = drill.inSand() ? starting(drill.sequence(), who.foot()) : drill.sequence();
    List<Double> positions = positions(who, sequence, steps, day);
    double landing = landing(positions);
    List<Double> prints = new ArrayList<>(positions.subList(0, positions.size() - 1));
    if (!drill.inSand()) {
      // On the flat nothing but lengths can be logged; a print is missed now and then.
      prints.replaceAll(p -> random.nextInt(8) == 0 ? Double.NaN : centimetres(p));
      return rep(athlete, date, sequence, steps, random.nextBoolean() ? prints : List.of(), centimetres(landing), null, null);
    }
    // A coach tapes half a metre before the last landing; the first time they guess, now and then far too near to the sand.
    double lastContact = prints.get(prints.size() - 1);
    Double last = lastLanding.put(sequence.text(), landing);
    double guess = random.nextInt(5) == 0 ? lastContact - 0.2 : landing + 0.6 * random.nextGaussian() - 0.4;
    double mark = Math.round(10 * (last == null ? guess : last - 0.5)) / 10.0;
    Outcome outcome = landing < mark ? Outcome.SHORT : lastContact >= mark ? Outcome.LATE : Outcome.IN;
    return switch (random.nextInt(3)) {
      case 0 -> {
        prints.replaceAll(DemoSquad::centimetres);
        yield rep(athlete, date, sequence, steps, prints, centimetres(landing), fits(outcome, centimetres(landing), mark), mark);
      }
      case 1 -> rep(athlete, date, sequence, steps, List.of(), centimetres(landing), fits(outcome, centimetres(landing), mark), mark);
      default -> rep(athlete, date, sequence, steps, List.of(), null, outcome, mark);
    };
  }

  /** Rounding to the centimetre can carry a landing over the edge of the sand; the tap goes with the measured length then. */
  private static Outcome fits(Outcome seen, double landing, double mark) {
    return seen == Outcome.LATE ? seen : landing < mark ? Outcome.SHORT : Outcome.IN;
  }

  private static Rep rep(
      Athlete athlete,
      LocalDate date,
      Sequence sequence,
      int steps,
      List<Double> prints,
      @Nullable Double landing,
      @Nullable Outcome outcome,
      @Nullable Double mark) {
    return new Rep(0, athlete.id(), date, sequence, steps, Surface.TRACK, prints, landing, outcome, mark, List.of());
  }

  /** Contacts 2 to n and the landing, from the mark [m]. */
  private List<Double> positions(Invented who, Sequence sequence, int steps, double day) {
    List<Double> out = new ArrayList<>();
    double at = 0;
    for (Flight f : sequence.flights()) {
      double share =
          switch (f.kind()) {
            case HOP -> 0.98;
            case BOUND -> 0.93;
            case JUMP -> 1.12;
          };
      double gathered = steps == 0 ? 0.2 * Math.min(f.order(), 4) : 0.1;
      double length = who.size() * share * (2.05 + gathered + 1.9 * (1 - Math.exp(-steps / 6.0)));
      at += length * day * (1 + 0.035 * random.nextGaussian());
      out.add(at);
    }
    return out;
  }

  private static double landing(List<Double> positions) {
    return positions.get(positions.size() - 1);
  }

  /** The sequence begun on this foot. */
  private static Sequence starting(Sequence sequence, Foot foot) {
    return sequence.contacts().get(0) == foot ? sequence : sequence.mirrored();
  }

  private static double centimetres(double metres) {
    return Math.round(metres * 100) / 100.0;
  }
}
