package boundwright.bench;

import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented reps in the quantities of a busy season; seeded, no evidence about athletes. */
final class InventedReps {
  private static final List<Sequence> DRILLS =
      List.of(
          Sequence.parse("RL x5"), Sequence.parse("RRL x2"), Sequence.parse("RRL RRL RRL"), Sequence.parse("RRLL RRLL RR"),
          Sequence.parse("R x6"), Sequence.parse("RRL"));

  private final Random random;
  private final double strength;

  InventedReps(long seed) {
    random = new Random(seed);
    strength = 0.85 + 0.3 * random.nextDouble();
  }

  /** {@code n} reps of an athlete, {@code perDay} a day, up to and with {@code last}, oldest first. */
  List<Rep> of(long athleteId, int n, int perDay, LocalDate last) {
    List<Rep> out = new ArrayList<>(n);
    LocalDate first = last.minusDays((n - 1) / perDay);
    double day = 1;
    for (int i = 0; i < n; i++) {
      if (i % perDay == 0) {
        day = 1 + 0.03 * random.nextGaussian();
      }
      out.add(rep(athleteId, first.plusDays(i / perDay), day));
    }
    return out;
  }

  private Rep rep(long athleteId, LocalDate date, double day) {
    Sequence sequence = DRILLS.get(random.nextInt(DRILLS.size()));
    int steps = 2 * random.nextInt(7);
    List<Double> prints = new ArrayList<>();
    double at = 0;
    for (Flight f : sequence.flights()) {
      double base = f.kind() == FlightKind.HOP ? 2.6 : f.kind() == FlightKind.BOUND ? 2.4 : 3.0;
      at += Math.max(0.5, base * strength * day * (1 + 0.05 * steps) * (1 + 0.04 * random.nextGaussian()));
      prints.add(Math.round(at * 100) / 100.0);
    }
    double landing = prints.remove(prints.size() - 1);
    double mark = Math.round((landing - 1.2 + 0.6 * random.nextGaussian()) * 100) / 100.0;
    int kind = random.nextInt(3);
    return new Rep(
        0, athleteId, date, sequence, steps, Surface.TRACK,
        kind == 0 ? prints : List.of(),
        kind <= 1 ? (Double) landing : null,
        landing < mark ? Outcome.SHORT : !prints.isEmpty() && prints.get(prints.size() - 1) > mark ? Outcome.LATE : Outcome.IN,
        mark,
        List.of());
  }
}
