package boundwright.athlete.person;

/** What is asked for. */
public enum Scope {
  /** Being filmed, and the films read. */
  FILM("film", "films are taken and read"),
  /** Results shown to others than the club. */
  RESULTS("results", "results are shown outside the club"),
  /** All that is kept handed to another club. */
  MOVE("move", "data go to another club");

  private final String key;
  private final String label;

  Scope(String key, String label) {
    this.key = key;
    this.label = label;
  }

  /** The word on the command line. */
  public String key() {
    return key;
  }

  /** What happens with a yes. */
  public String label() {
    return label;
  }
}
