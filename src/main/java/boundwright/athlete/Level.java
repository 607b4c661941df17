package boundwright.athlete;

import java.util.List;

/** How far an athlete has come; the three levels in which the trade's handbooks give their limits, and that nobody has said. */
public enum Level {
  /** New to bounding. */
  BEGINNER("beginner"),
  /** Bounds from a run-up with good form. */
  INTERMEDIATE("intermediate"),
  /** Competes in the triple jump from a full run-up. */
  ADVANCED("advanced"),
  /** Nobody has said yet, as after an import: flights are guessed as of the middle level, limits are the lowest. */
  NOT_SET("level not set");

  /** Those that a coach can choose. */
  public static final List<Level> KNOWN = List.of(BEGINNER, INTERMEDIATE, ADVANCED);

  private final String label;

  Level(String label) {
    this.label = label;
  }

  /** The level in one word. */
  public String label() {
    return label;
  }

  /** The level whose limits are asked: the lowest when it is not set. */
  public Level judgedAs() {
    return this == NOT_SET ? BEGINNER : this;
  }

  /** The level from which flights are first guessed: the middle when it is not set. */
  public Level guessedAs() {
    return this == NOT_SET ? INTERMEDIATE : this;
  }
}
