package boundwright.web;

/** A request that is turned away at the door, with the HTTP status and the sentence for whoever sent it. */
final class Turned extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final int status;

  Turned(int status, String sentence) {
    super(sentence);
    this.status = status;
  }

  int status() {
    return status;
  }
}
