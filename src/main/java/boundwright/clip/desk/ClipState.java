package boundwright.clip.desk;

/** How far a clip has come. */
public enum ClipState {
  /** In the queue. */
  WAITING("waiting"),
  /** Being read. */
  READING("being read"),
  /** Body points are there. */
  READ("read"),
  /** Could not be read; the reason is kept. */
  REFUSED("refused"),
  /** Called off by the coach. */
  CANCELLED("called off");

  private final String label;

  ClipState(String label) {
    this.label = label;
  }

  /** In words. */
  public String label() {
    return label;
  }

  /** Whether it may be put into the queue again. */
  public boolean canRetry() {
    return this == REFUSED || this == CANCELLED || this == READ;
  }
}
