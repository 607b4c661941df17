package boundwright.web.settings;

import java.util.List;
import java.util.Map;

/**
 * Backups.
 *
 * @param last when the last one was made and what it holds, or that there is none
 * @param left when one last left the machine, or that none did
 * @param trouble why none could be made, or empty
 * @param lost what was found lost, or empty
 * @param kept the backups in the folder, newest first, a line each
 * @param folder where they are
 * @param films whether films go along
 * @param fields how many days, weeks and months stay
 * @param refused why the form was not taken, or empty
 * @param said what was done, or empty
 */
public record BackupView(
    String last, String left, String trouble, String lost, List<String> kept, String folder, boolean films, Map<String, String> fields, String refused, String said) {
  /** A field of the form. */
  public String field(String name) {
    return fields.getOrDefault(name, "");
  }
}
