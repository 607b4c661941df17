package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented athletes and reps for the store's tests. */
public final class Fixtures {
  public static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-12T15:00:00Z"), ZoneOffset.UTC);
  public static final LocalDate TODAY = LocalDate.of(2026, 5, 12);

  private static final String[] SEQUENCES = {"RL x5", "RRL x2", "RRLL RRLL RR", "L x6", "R", "(RL x2 R)x3"};

  private Fixtures() {}

  public static Athlete athlete(String name) {
    return new Athlete(0, name, Level.INTERMEDIATE, Foot.RIGHT, 4);
  }

  public static Rep tap(long athleteId, LocalDate date) {
    return new Rep(0, athleteId, date, Sequence.parse("RRL"), 4, Surface.TRACK, List.of(), null, Outcome.IN, null, List.of());
  }

  @SafeVarargs
  private static <T> T one(Random random, T... of) {
    return of[random.nextInt(of.length)];
  }

  /** Any rep that the program can take, with every field now and then missing. */
  public static Rep any(Random random, long athleteId) {
    Sequence sequence = Sequence.parse(SEQUENCES[random.nextInt(SEQUENCES.length)]);
    List<Double> prints = new ArrayList<>();
    double at = 0;
    boolean measured = random.nextBoolean();
    for (int i = 1; i < sequence.size(); i++) {
      at += 1 + 2 * random.nextDouble();
      if (measured) {
        prints.add(random.nextInt(4) == 0 ? Double.NaN : at);
      }
    }
    // One print that was not seen and nothing else is written like no prints at all, so the law leaves it out.
    if (prints.size() == 1 && prints.get(0).isNaN()) {
      prints.clear();
    }
    Double landing = random.nextBoolean() ? at + 1 + 2 * random.nextDouble() : null;
    Double mark = random.nextBoolean() ? (landing == null ? at : landing) - 0.3 * random.nextDouble() : null;
    Outcome outcome =
        mark != null && landing != null
            ? Outcome.IN
            : one(random, Outcome.SHORT, Outcome.IN, Outcome.LATE);
    List<String> faults = random.nextInt(3) == 0 ? List.of("toe-up@1", "forward-lean") : List.of();
    Integer after = null;
    if (landing == null && random.nextInt(5) == 0) {
      outcome = Outcome.ABANDONED;
      after = random.nextBoolean() ? null : sequence.size();
    }
    return new Rep(
        0,
        athleteId,
        TODAY.minusDays(random.nextInt(40)),
        sequence,
        random.nextInt(13),
        one(random, Surface.GRASS, Surface.SPRUNG_FLOOR, Surface.RAISED_RUNWAY, Surface.TRACK),
        prints,
        landing,
        outcome,
        after,
        mark == null || mark < 0 ? null : mark,
        random.nextBoolean(),
        faults);
  }
}
