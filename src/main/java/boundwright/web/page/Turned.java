package boundwright.web.page;

/** A request that is turned away at the door, with the HTTP status and the sentence for whoever sent it. */
public final class Turned extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final int status;

  public Turned(int status, String sentence) {
    super(sentence);
    this.status = status;
  }

  public int status() {
    return status;
  }
}
