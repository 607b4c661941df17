package boundwright.store.season;

import boundwright.quantity.RefusedException;

/** Something in a season's file cannot be taken. A page shows the sentence beside the field that stands for the place. */
public final class MisreadException extends RefusedException {
  private static final long serialVersionUID = 1L;

  private final String path;
  private final String sentence;

  MisreadException(String path, String whose, String sentence, Throwable cause) {
    super(said(path, whose, sentence), cause);
    this.path = path;
    this.sentence = sentence;
  }

  MisreadException(String path, String whose, String sentence) {
    super(said(path, whose, sentence));
    this.path = path;
    this.sentence = sentence;
  }

  private static String said(String path, String whose, String sentence) {
    return (path.isEmpty() ? "The file" : path) + (whose.isEmpty() ? "" : " (" + whose + ")") + ": " + sentence;
  }

  /** Where in the file, as {@code places[2].hours.monday}; lists count from 1; empty for the whole file. */
  public String path() {
    return path;
  }

  /** What is wrong with it and what to do, without the place. */
  public String sentence() {
    return sentence;
  }
}
