package boundwright.web.files;

import boundwright.quantity.Notes;
import boundwright.store.RepCsv;
import java.util.List;

/**
 * Reps from a file.
 *
 * @param token of the file that was read and waits for the coach's word, or empty
 * @param name of the file
 * @param good rows that can be taken
 * @param there lines of rows that are there already
 * @param problems rows that cannot
 * @param athletes how many athletes the good rows name
 * @param later lines of rows that are dated after today
 * @param past files that were taken, newest first
 * @param refused why the file cannot be read at all, or empty
 * @param said what was done, or empty
 */
public record FilesView(
    String token, String name, int good, List<Integer> there, List<RepCsv.Problem> problems, int athletes, List<Integer> later,
    List<Past> past, String refused, String said) {
  /** How many problems a page lists. */
  public static final int MOST_LISTED = 100;

  /** The page before a file was chosen. */
  static FilesView blank(List<Past> past, String refused, String said) {
    return new FilesView("", "", 0, List.of(), List.of(), 0, List.of(), past, refused, said);
  }

  /**
   * A file that was taken.
   *
   * @param number by which it is taken back
   * @param line what it is called, when it came and how much of it is here
   */
  public record Past(long number, String line) {}

  /** What is dated after today, in a question, or empty. */
  public String datedLater() {
    return later.isEmpty()
        ? ""
        : Notes.counted(later.size(), "rep is", "reps are") + " dated after today: " + RepCsv.lines(later) + ".";
  }

  /** What is there already, in a sentence, or empty. */
  public String alreadyThere() {
    return there.isEmpty()
        ? ""
        : (there.size() == 1 ? "1 rep is there already and" : there.size() + " reps are there already and") + " will not be doubled: "
            + RepCsv.lines(there) + ".";
  }

  /** The problems that are listed. */
  public List<RepCsv.Problem> listed() {
    return problems.subList(0, Math.min(MOST_LISTED, problems.size()));
  }
}
