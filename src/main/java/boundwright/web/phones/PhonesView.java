package boundwright.web.phones;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The page of the phones.
 *
 * @param open whether phones can come at all
 * @param addresses where they come, likeliest first
 * @param code the code that was just made, or null
 * @param trust where phones learn to trust the certificate; empty without https
 * @param phones those that were let in
 * @param said what was just done; empty for nothing
 */
public record PhonesView(boolean open, List<String> addresses, @Nullable Shown code, String trust, List<Row> phones, String said) {
  /**
   * A code as it is shown, once.
   *
   * @param address what the code holds
   * @param side squares along a side
   * @param path dark squares
   * @param until time of day
   * @param rights what the phone may do
   */
  public record Shown(String address, int side, String path, String until, String rights) {}

  /**
   * A phone.
   *
   * @param number its number in the store
   * @param name what it is called
   * @param rights what it may do
   * @param all whether that is everything
   * @param since day and time
   * @param seen day and time
   * @param way how it was paired: {@code http} or {@code https}
   */
  public record Row(long number, String name, String rights, boolean all, String since, String seen, String way) {}
}
