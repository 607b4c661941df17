package boundwright.flight.season;

import boundwright.footfall.Sequence;
import java.util.List;

/** A sequence from a number of approach steps. */
record Drill(Sequence sequence, int steps) {
  static Drill of(String text, int steps) {
    return new Drill(Sequence.parse(text), steps);
  }

  /** Two drills at one rung. */
  static final List<Drill> FEW = List.of(of("RL x5", 4), of("RRL x2", 4));

  /** The same at another rung. */
  Drill from(int approachSteps) {
    return new Drill(sequence, approachSteps);
  }

  /** Two drills from standing. */
  static final List<Drill> STANDING = List.of(of("RL x5", 0), of("RRL x2", 0));
  /** Two drills at each of two rungs. */
  static final List<Drill> TWOS = List.of(of("RL x5", 0), of("RRL x2", 0), of("RL x5", 2), of("RRL x2", 2));
  /** See {@link #TWOS}. */
  static final List<Drill> SIXES = List.of(of("RL x5", 4), of("RRL x2", 4), of("RL x5", 6), of("RRL x2", 6));

  /** Eight drills over four rungs. */
  static final List<Drill> MIXED =
      List.of(
          of("RL x5", 0), of("RRL x2", 0), of("RL x5", 2), of("R x5", 2), of("L x5", 2), of("RRLL RRLL", 4), of("RL x5", 4), of("RRL x2", 4));
}
