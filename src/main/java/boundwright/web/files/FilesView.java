package boundwright.web.files;

import boundwright.store.RepCsv;
import java.util.List;

/**
 * Reps from a file.
 *
 * @param token of the file that was read and waits for the coach's word, or empty
 * @param name of the file
 * @param good rows that can be taken
 * @param problems rows that cannot
 * @param athletes how many athletes the good rows name
 * @param refused why the file cannot be read at all, or empty
 * @param said what was done, or empty
 */
public record FilesView(
    String token, String name, int good, List<RepCsv.Problem> problems, int athletes, String refused, String said) {
  /** How many problems a page lists. */
  public static final int MOST_LISTED = 100;

  /** The page before a file was chosen. */
  static FilesView blank(String refused, String said) {
    return new FilesView("", "", 0, List.of(), 0, refused, said);
  }

  /** The problems that are listed. */
  public List<RepCsv.Problem> listed() {
    return problems.subList(0, Math.min(MOST_LISTED, problems.size()));
  }
}
