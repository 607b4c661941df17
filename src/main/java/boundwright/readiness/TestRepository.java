package boundwright.readiness;

import java.util.List;

/**
 * Where test scores are kept. Every write is on disk when the method returns. A score is the one truth about a test: the known
 * mark or run-up that {@link TestScore#knownMark} and {@link TestScore#runUp} derive from it is part of the athlete's profile while
 * the score is kept, and what was learned of the athlete is learned again.
 */
public interface TestRepository {
  /** Adds a score and returns it with its number. */
  TestScore add(TestScore score);

  /** Takes a score out; nothing happens if it is not there. */
  void remove(long athleteId, long scoreId);

  /** The scores of an athlete by date and then number, oldest first. */
  List<TestScore> of(long athleteId);

  /** The squad's scores of one test by date and then number, oldest first. */
  List<TestScore> all(TestKind kind);
}
