package boundwright.jump;

import java.util.List;

/** The three phases of a triple jump, in order. */
public enum Phase {
  /** First: the same foot lands. */
  HOP("hop"),
  /** Second: the other foot lands. */
  STEP("step"),
  /** Third: into the sand. */
  JUMP("jump");

  /** Hop, step, jump. */
  public static final List<Phase> IN_ORDER = List.of(HOP, STEP, JUMP);

  private final String label;

  Phase(String label) {
    this.label = label;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }
}
