package boundwright.evidence;

/**
 * Where a number comes from.
 *
 * @param id short stable name, lower case with hyphens, also the anchor on the sources page
 * @param about what the number or formula is
 * @param citation author, title, year, or {@code "common practice"}
 * @param standing how far it can be trusted
 */
public record Source(String id, String about, String citation, Standing standing) {
  /** The citation with its standing, as printed beneath a number. */
  public String line() {
    return standing == Standing.COMMON_PRACTICE ? "common practice" : citation + " (" + standing.label() + ")";
  }
}
