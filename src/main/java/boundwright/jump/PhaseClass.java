package boundwright.jump;

/** How the distance is shared out (Hay 1992; memory). */
public enum PhaseClass {
  /** The hop's share leads by at least the threshold. */
  HOP_DOMINATED("hop-dominated"),
  /** Neither hop nor jump leads by the threshold. */
  BALANCED("balanced"),
  /** The jump's share leads by at least the threshold. */
  JUMP_DOMINATED("jump-dominated");

  private final String label;

  PhaseClass(String label) {
    this.label = label;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }
}
