package boundwright.card;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.Level;
import boundwright.flight.Forecast;
import boundwright.flight.Forecasts;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkSettings;
import boundwright.runway.Opener;
import boundwright.runway.Tapes;
import boundwright.runway.Window;
import boundwright.technique.Teaching;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Hand-made advice for the tests of this room; round numbers, no athlete stands behind them. */
public final class Fixtures {
  private Fixtures() {}

  public static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-03T09:00:00Z"), ZoneOffset.UTC);

  /** Five drills: cut, mirrored, on the flat, closed and plain. */
  public static final DayPlan PLAN =
      new DayPlan(
          "Bounds and first combinations",
          List.of(
              new Drill(Sequence.parse("RL x5"), 0, 2, 2, true),
              new Drill(Sequence.parse("RRL x2"), null, 2, 3, true),
              new Drill(Sequence.parse("RRLL x3"), null, 1, 2, true),
              new Drill(Sequence.parse("R x6"), 2, 1, 2, false),
              new Drill(Sequence.parse("RRL"), 6, 2, 3, true)));

  public static final CoachSettings FEET =
      new CoachSettings(LengthUnit.FEET_INCHES, MarkSettings.DEFAULT, Facility.DEFAULT, Sequence.SET_CONTACTS);

  public static Athlete athlete(int i) {
    String[] names = {"Ilva Torun", "Sem Okkar", "Pia Lund & Co", "Rado Vesk", "Mira Quell"};
    return new Athlete(i + 1, names[i % names.length] + (i < names.length ? "" : " " + i), Level.INTERMEDIATE, Foot.RIGHT, 2 * (i % 4));
  }

  public static List<Athlete> athletes(int n) {
    return IntStream.range(0, n).mapToObj(Fixtures::athlete).toList();
  }

  /** Advice by hand, and one tape for each drill. */
  public static SessionCards cards() {
    return new SessionCards(
        new SessionCards.Marks() {
          @Override
          public MarkAdvice advise(Athlete athlete, Sequence sequence, int approachSteps, CoachSettings settings) {
            return advice(sequence.text(), approachSteps, sequence.size() > 7 ? 0.012 : athlete.rung() == 6 ? 0.2 : 0.02);
          }

          @Override
          public Tapes tapes(List<Athlete> athletes, DayPlan plan, CoachSettings settings) {
            List<Tapes.Tape> tapes = new ArrayList<>();
            List<Tapes.Wish> proof = new ArrayList<>();
            for (Drill d : plan.drills()) {
              if (!d.inSand()) {
                continue;
              }
              List<Tapes.Wish> wishes = new ArrayList<>();
              for (Athlete a : athletes) {
                int steps = d.stepsFor(a.rung());
                wishes.add(
                    new Tapes.Wish(
                        a.name(), d.sequence().text() + ", from " + steps + " steps", advise(a, d.sequence(), steps, settings)));
              }
              tapes.add(new Tapes.Tape(wishes.get(0).advice().markToSand_m(), wishes));
              proof.add(wishes.get(0));
            }
            return new Tapes(tapes, proof, List.of());
          }
        },
        CLOCK,
        () -> Teaching.DEFAULT);
  }

  public static MarkAdvice advice(String letters, int steps) {
    return advice(letters, steps, 0.03);
  }

  /** The mark half way between last contact and landing; the window from the two 95 % points, null if they cross. */
  public static MarkAdvice advice(String letters, int steps, double relativeSd) {
    Sequence sequence = Sequence.parse(letters);
    Forecast forecast = Forecasts.plausible(sequence, steps, relativeSd);
    int n = sequence.size();
    double mark = (forecast.mean(n) + forecast.mean(n + 1)) / 2;
    double least = forecast.mean(n) + 0.3 + 1.2816 * forecast.sd(n);
    double most = forecast.mean(n + 1) - 0.3 - 1.2816 * forecast.sd(n + 1);
    @Nullable Window window = least <= most ? new Window(least, most) : null;
    double chance = window == null ? 0.71 : 0.95;
    Estimate start = steps == 0 ? new Estimate(0, 0, 0) : Estimate.normal(1.45 * steps - 0.6, 0.15);
    Estimate speed = steps == 0 ? new Estimate(0, 0, 0) : Estimate.normal(3 + 0.5 * steps, 0.3);
    List<Opener> openers =
        window != null ? List.of() : List.of(new Opener(Opener.Way.FEWER_CONTACTS, "The first 4 contacts work from 6.20 m to 6.60 m."));
    List<String> warnings =
        window != null
            ? List.of()
            : List.of("No mark reaches 90 in 100: do not rely on this one.");
    return new MarkAdvice(
        forecast, MarkSettings.DEFAULT, mark, chance, window, null, new MarkAdvice.LearningMarks(least, most), start, steps == 0 ? 0 : 2, speed,
        mark + start.p95(), forecast.landing().p95() + start.p95(), openers, "From 12 reps, 8 of them measured.",
        "Fairly sure: the landing to ± 30 cm, nine times in ten.", null, warnings);
  }
}
