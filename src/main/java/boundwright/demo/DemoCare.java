package boundwright.demo;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.athlete.growth.Measurement;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.back.BackStep;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.load.rating.SessionRating;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.List;
import java.util.ListIterator;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * What was seen and felt of the invented squad: judged reps, ratings, pains, a medical hold, tests done twice. Made up so that
 * every answer of the guard and the gate can be met; see {@link DemoSquad}.
 */
final class DemoCare {
  private static final long SEED = 20_260_513L;
  private static final int[] EXTRA_DAYS = {19, 12, 5};
  private static final int[] HEIGHT_WEEKS = {100, 92, 85, 78, 71, 64, 57, 50, 43, 36, 29, 22, 15, 9, 2};
  private static final int[] HEIGHTS_MM = {1406, 1417, 1432, 1442, 1456, 1465, 1474, 1485, 1489, 1498, 1502, 1508, 1511, 1519, 1522};
  private static final List<String> FAULTS = List.of("upright", "toe-up", "foot-under", "hips-tall", "speed-through");
  private static final List<String> REACHING = List.of("foot-under");

  private final Workbench workbench;
  private final LocalDate today;
  private final Random random = new Random(SEED);

  DemoCare(Workbench workbench, LocalDate today) {
    this.workbench = workbench;
    this.today = today;
  }

  /** Judges this athlete's reps in {@code reps}, adds some, and keeps the rest; inside the demo's transaction. */
  void watch(Athlete athlete, List<Rep> reps) {
    double clean =
        switch (athlete.name()) {
          case "Rafi Eelgrass" -> 0;
          case "Wren Samphire", "Linnea Saltwort" -> 1;
          default -> 0.85;
        };
    List<String> faults = clean < 0.5 ? REACHING : FAULTS;
    ListIterator<Rep> all = reps.listIterator();
    while (all.hasNext()) {
      Rep rep = all.next();
      if (rep.athleteId() == athlete.id()) {
        all.set(judged(rep, random.nextDouble() < clean, faults));
      }
    }
    switch (athlete.name()) {
      case "Wren Samphire", "Linnea Saltwort" -> more(athlete, true, reps);
      case "Rafi Eelgrass" -> more(athlete, false, reps);
      case "Tovi Plover" ->
          workbench.care().openHold(athlete.id(), new MedicalHold(0, today.minusDays(4), "set by the team physician (invented)", null, null));
      case "Otis Sedgeley" -> {
        wayBack(athlete);
        workbench.care().addPain(athlete.id(), new Pain(0, today.minusDays(1), "left heel", 4, null, false));
      }
      case "Mabel Cordgrass" -> {
        workbench.care().setGrowing(athlete.id(), true, today.minusWeeks(40));
        workbench.care().addPain(athlete.id(), new Pain(0, today.minusDays(2), "right knee", 1, true, false));
        grows(athlete);
      }
      default -> {}
    }
    for (int ago : new int[] {13, 9, 6, 2}) {
      double rating = Math.round(2 * (5 + 1.5 * random.nextGaussian())) / 2.0;
      workbench.care().keep(new SessionRating(athlete.id(), today.minusDays(ago), Math.max(1, Math.min(10, rating)), 60 + 5 * random.nextInt(6)));
    }
    tests(athlete);
  }

  /** A girl of twelve and a half whose height spurt is just over, measured every seven weeks; she sat for one of them and stood on scales for another. */
  private void grows(Athlete athlete) {
    workbench.people().keep(athlete.id(), new Person(today.minusMonths(150), Sex.FEMALE));
    for (int k = 0; k < HEIGHTS_MM.length; k++) {
      Double sitting = k == HEIGHTS_MM.length - 1 ? 0.803 : null;
      Double mass = k == 0 ? 38.0 : null;
      workbench
          .growth()
          .add(athlete, new Measurement(0, today.minusWeeks(HEIGHT_WEEKS[k]), HEIGHTS_MM[k] / 1000.0, sitting, mass, k % 3 == 0 ? "physiotherapist" : "coach"));
    }
  }

  /** The left leg in its third stage, after a hold that an invented clinician ended. */
  private void wayBack(Athlete athlete) {
    String clinician = "Dr Teasel (invented)";
    MedicalHold hold = workbench.care().openHold(athlete.id(), new MedicalHold(0, today.minusDays(38), "set by the team physician (invented)", null, null));
    workbench.care().endHold(athlete.id(), hold.id(), clinician, today.minusDays(25));
    LocalDate begun = today.minusDays(24);
    WayBack way =
        workbench
            .waysBack()
            .begin(
                athlete.id(),
                new WayBack(
                    0, Foot.LEFT, begun, new Stages(0.5, 0.1), 350, 13, new WayBack.Clearance(clinician, today.minusDays(25), true), List.of(), null));
    for (int week = 1; week <= 2; week++) {
      workbench.waysBack().step(athlete.id(), way.id(), new BackStep(0, begun.plusWeeks(week), BackStep.Kind.ON, week, "Coach Reed (invented)", "two clean days"));
    }
  }

  /** Five or six reps of the last drill on each of three days from the athlete's own rung. */
  private void more(Athlete athlete, boolean clean, List<Rep> reps) {
    Sequence drill = Sequence.parse(athlete.takeOffFoot() == Foot.RIGHT ? "RRL x2" : "LLR x2");
    double usual =
        reps.stream()
            .filter(r -> r.athleteId() == athlete.id() && r.approachSteps() == athlete.rung() && r.sequence().size() == drill.size())
            .filter(r -> r.landing_m() != null)
            .mapToDouble(r -> r.landing_m() == null ? 0 : r.landing_m())
            .average()
            .orElse(16.5 + 0.5 * athlete.rung());
    for (int ago : EXTRA_DAYS) {
      for (int i = 0; i < (clean ? 5 : 6); i++) {
        double landing = Math.round(100 * usual * (1 + 0.012 * random.nextGaussian())) / 100.0;
        Rep rep =
            new Rep(0, athlete.id(), today.minusDays(ago), drill, athlete.rung(), Surface.TRACK, List.of(), landing, null, null, List.of());
        reps.add(judged(rep, clean || i == 0, REACHING));
      }
    }
  }

  private Rep judged(Rep r, boolean clean, List<String> faults) {
    List<String> seen =
        clean
            ? List.of()
            : List.of(faults.get(random.nextInt(faults.size())) + "@" + (1 + Math.max(random.nextInt(r.sequence().size()), random.nextInt(r.sequence().size()))));
    return new Rep(
        r.id(), r.athleteId(), r.date(), r.sequence(), r.approachSteps(), r.surface(), r.footprints_m(), r.landing_m(), r.outcome(),
        r.markToSand_m(), true, seen);
  }

  /** Each leg's series of hops, done twice ten days apart and once before, so that the test's own error can be seen. */
  private void tests(Athlete athlete) {
    double right = 9.5 + 1.2 * random.nextDouble() + 0.1 * athlete.rung();
    double left = right * (1 + 0.03 * random.nextGaussian());
    for (int ago : new int[] {40, 24, 14}) {
      score(athlete, TestKind.SINGLE_LEG_RIGHT, right, ago, null);
      score(athlete, TestKind.SINGLE_LEG_LEFT, left, ago, null);
    }
  }

  private void score(Athlete athlete, TestKind kind, double about, int ago, @Nullable Double runUp) {
    double value = Math.round(100 * about * (1 + 0.02 * random.nextGaussian())) / 100.0;
    workbench
        .tests()
        .add(new TestScore(0, athlete.id(), kind, 0, value, runUp, today.minusDays(ago), TestProtocol.usual(kind, Surface.TRACK)));
  }
}
