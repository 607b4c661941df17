package boundwright.account;

/**
 * A club that has a store of its own.
 *
 * @param id number; {@link #FIRST} is the club of the data folder itself
 * @param name 1 to 60 characters
 */
public record Club(long id, String name) {
  /** The club whose store also keeps the accounts. */
  public static final long FIRST = 1;
}
