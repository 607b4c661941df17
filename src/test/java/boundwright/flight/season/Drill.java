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

  /** The same two from standing, and from 2 and 4 steps. */
  static final List<Drill> STANDING = List.of(of("RL x5", 0), of("RRL x2", 0));
  static final List<Drill> TWO_RUNGS = List.of(of("RL x5", 2), of("RRL x2", 4), of("RRL x2", 2), of("RL x5", 4));

  /** Eight drills over four rungs. */
  static final List<Drill> MIXED =
      List.of(
          of("RL x5", 0), of("RRL x2", 0), of("RL x5", 2), of("R x5", 2), of("L x5", 2), of("RRLL RRLL", 4), of("RL x5", 4), of("RRL x2", 4));
}
